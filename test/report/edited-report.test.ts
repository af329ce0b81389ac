import { readFileSync } from 'node:fs'
import { expect, test, vi } from 'vitest'
import { seeded } from '../../src/budget/seeded'
import { parsePlan } from '../../src/files/parse-plan'
import type { Position } from '../../src/geo/position'
import { moveHazardVertex, removeHazard } from '../../src/plan/hazard-edits'
import { insertBend, moveBend, removeBend, setLays } from '../../src/plan/leg-edits'
import { removeLine, reverseLine, setPairs, setWire } from '../../src/plan/line-edits'
import type { Plan } from '../../src/plan/plan'
import { setAllowance, setStock, setWeather, setWireTemp, setWork } from '../../src/plan/settings-edits'
import { moveStation, removeStation, renameStation } from '../../src/plan/station-edits'
import type { Result } from '../../src/problem'
import { reportPlan } from '../../src/report/report-plan'
import { bigPlan } from '../bench/big-plan'
import { todays } from '../cases'

/** What a program reports that has never seen a plan before. */
async function reportAnew(plan: Plan) {
  vi.resetModules()
  const anew = await import('../../src/report/report-plan')
  return anew.reportPlan(plan)
}

function demo(): Plan {
  const read = parsePlan(readFileSync('public/demo.plan.geojson', 'utf8'))
  if (!read.ok) throw new Error('the demo is refused')
  return read.value
}

/** One edit of whatever kind, somewhere. */
function editOf(plan: Plan, random: () => number): Plan {
  const oneOf = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!
  const kept = (result: Result<Plan>) => (result.ok ? result.value : plan)
  const aside = ([lonDeg, latDeg]: Position): Position => [
    lonDeg + (random() - 0.5) * 0.01,
    latDeg + (random() - 0.5) * 0.006,
  ]
  const station = oneOf([...plan.stations.values()])
  const line = oneOf([...plan.lines.values()])
  const hazard = oneOf([...plan.hazards.keys()])
  const leg = Math.floor(random() * (line?.legs.length ?? 1))
  const bend = Math.floor(random() * (line?.bends.length || 1))
  const ofLine: readonly (() => Plan)[] = line
    ? [
        () => (line.bends[bend] ? moveBend(plan, line.id, bend, aside(line.bends[bend])) : plan),
        () => (line.bends[bend] ? removeBend(plan, line.id, bend) : plan),
        () => insertBend(plan, line.id, leg, aside(plan.stations.get(line.to)!.position)),
        () => setLays(plan, line.id, [leg], oneOf(['surface', 'overhead', 'buried', 'water'] as const)),
        () => kept(setPairs(plan, line.id, 1 + Math.floor(random() * 3))),
        () => setWire(plan, line.id, oneOf(['wd-1a', 'w-110-b'])),
        () => reverseLine(plan, line.id),
        () => removeLine(plan, line.id),
      ]
    : []
  const ofPlan: readonly (() => Plan)[] = [
    () => renameStation(plan, station.id, `Post ${Math.floor(random() * 99)}`),
    () => removeStation(plan, station.id),
    () => setWeather(plan, oneOf(['dry', 'wet'] as const)),
    () => kept(setWireTemp(plan, Math.floor(random() * 40))),
    () => kept(setAllowance(plan, 'spliceWasteM', random())),
    () => kept(setWork(plan, 'tagEveryM', 200 + Math.floor(random() * 400))),
    () => kept(setWork(plan, 'personLimitKg', 15 + Math.floor(random() * 20))),
    () =>
      kept(
        setStock(
          plan,
          random() < 0.5
            ? []
            : [
                { wire: 'wd-1a', lengthM: 1609.344, count: 6 },
                { wire: 'wd-1a', lengthM: 402.336, count: 20 },
              ],
        ),
      ),
    ...(hazard
      ? [() => moveHazardVertex(plan, hazard, 0, aside(station.position)), () => removeHazard(plan, hazard)]
      : []),
  ]
  const kinds = [...ofLine, ...ofLine, ...ofPlan]
  return random() < 0.3 ? moveStation(plan, station.id, aside(station.position)) : oneOf(kinds)()
}

/** Longer than half a spool and shorter, so that runs share spools, and enough of them for a large group. */
const crowd = () => bigPlan({ stations: 90, perCircuit: 9, bends: 3 })

test.each([
  ['the demo', demo, 11],
  ...todays(
    [
      ['ninety stations', crowd, 12],
      ['ninety stations, otherwise', crowd, 13],
    ] as const,
    2,
  ),
] as const)(
  'after whatever edits of %s, drags and undos the report is what it is from scratch',
  {
    timeout: 120_000,
  },
  async (_, planOf, seed) => {
    const random = seeded(seed)
    const past = [planOf()]
    for (let round = 0; round < 5; round++) {
      for (let edit = 0; edit < 6; edit++) {
        const settled = past.at(-1)!
        const next = editOf(settled, random)
        if (random() < 0.5) reportPlan(next, undefined, settled)
        past.push(random() < 0.2 ? past[Math.floor(random() * past.length)]! : next)
        reportPlan(past.at(-1)!)
      }
      expect(reportPlan(past.at(-1)!)).toEqual(await reportAnew(past.at(-1)!))
    }
  },
)
