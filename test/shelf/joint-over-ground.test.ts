import { expect, test } from 'vitest'
import { shelfOf } from '../../src/files/parse-shelf'
import { planeAbout } from '../../src/geo/plane'
import type { HazardId } from '../../src/plan/id'
import type { Hazard } from '../../src/plan/plan'
import { reportPlan } from '../../src/report/report-plan'
import { shelfAnswer } from '../../src/shelf/shelf-answer'
import { termsOver } from '../../src/shelf/ways-over'

const plane = planeAbout([[9, 47]])
const at = (east: number, north: number) => plane.toPosition([east, north])

/** A keep-out area where three places would be joined on a plane. */
const PIT: Hazard = {
  id: 'pit' as HazardId,
  hazard: 'keep-out',
  name: 'Pit',
  geometry: {
    type: 'Polygon',
    coordinates: [[at(-150, -150), at(150, -150), at(150, 150), at(-150, 150), at(-150, -150)]],
  },
}

test('a joint in the open is not made in a keep-out area, and none of its lines crosses it', () => {
  const shelf = shelfOf({
    places: [
      [-1300, -750],
      [1300, -750],
      [0, 1500],
    ].map(([east, north], k) => {
      const [lon, lat] = at(east!, north!)
      return { id: `p${k}`, lon, lat }
    }),
    have: { wires: [{ wire: 'wd-1a', lengthM: 1609, count: 8 }], sets: [{ set: 'crank-1600', count: 3 }] },
  })
  if (!shelf.ok) throw new Error(JSON.stringify(shelf.problems))
  const { nets } = shelfAnswer(shelf.value, termsOver(shelf.value, { hazards: [PIT] }, undefined))
  const joined = nets.find(({ joints }) => joints > 0)!
  const joint = [...joined.plan.stations.values()].find(({ name }) => name === 'Joint 1')!
  const [east, north] = plane.toPlane(joint.position)
  expect(Math.max(Math.abs(east), Math.abs(north))).toBeGreaterThan(150)
  const plan = { ...joined.plan, hazards: new Map([[PIT.id, PIT]]) }
  const { cautions, circuits } = reportPlan(plan)
  expect(cautions.filter(({ code }) => code.includes('keep-out'))).toEqual([])
  expect(circuits[0]!.verdict).toBe(joined.judged.verdict)
})
