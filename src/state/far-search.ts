import { effect } from '@preact/signals'
import { farJobs } from '../jobs/far-jobs'
import { whenStill } from '../jobs/when-still'
import { measurePlan } from '../measure/measure-line'
import { type Further, withFurther } from '../plan/further-line'
import type { Plan } from '../plan/plan'
import type { FarQuestion } from '../report/far-shades'
import type { Ground } from '../terrain/ground'
import { FURTHER_NAME } from '../words/far-words'
import type { FarAsked } from './far-state'
import { newCircuitId, newLineId, newStationId } from './new-id'
import type { Store } from './store'
import { equipmentUsedLast } from './used-last'

/** A further telephone has no place yet: it is thought so far north of where its line begins, degrees. */
const SOMEWHERE_DEG = 0.001

/** Keeps `store.far` filled with how far it could go from where is asked, whenever the hand is still. Returns the undoing of itself. */
export function searchFar(store: Store): () => void {
  const jobs = farJobs('Reckoning how far it could go')
  /** The same question about another state of the plan is about the same line. */
  let last: { readonly asked: FarAsked | null; ids: Further['ids'] | undefined } = {
    asked: null,
    ids: undefined,
  }
  const stop = effect(() => {
    const [drawn, asked] = [store.farDrawn.value, store.farAsked.value]
    const settled = store.settled.value
    const ground = store.ground.value
    if (asked !== last.asked) last = { asked, ids: undefined }
    const question = drawn
      ? { ...drawn, measured: measurePlan(drawn.plan, ground) }
      : asked && questionOf(asked, settled, ground)
    if (!question) {
      store.far.value = null
      return undefined
    }
    if (store.dragging.value && !drawn) return undefined
    const { plan, line } = question
    const before = store.far.peek()
    // Shades of the same line stay until the new ones come.
    const found = before?.line === line ? before.found : null
    store.far.value = { plan, line, found, isUnderWay: true, failure: '' }
    return whenStill(async (signal) => {
      jobs.setGrids(ground?.grids ?? [])
      const result = await jobs.ask('shades', question, {
        signal,
        about: () => [
          store.farDrawn.peek(),
          store.farAsked.peek(),
          store.settled.peek(),
          store.ground.peek(),
        ],
        onPart: (part) => {
          store.far.value = { plan, line, found: part, isUnderWay: true, failure: '' }
        },
      })
      if (!result) return
      store.far.value = result.ok
        ? { plan, line, found: result.value, isUnderWay: false, failure: '' }
        : { plan, line, found: null, isUnderWay: false, failure: result.problems[0]!.message }
    })
  })
  return () => {
    stop()
    jobs.dispose()
  }

  /** What is asked, as a plan with one line more; undefined where the station is gone. */
  function questionOf(asked: FarAsked, settled: Plan, ground: Ground | undefined): FarQuestion | undefined {
    const station = settled.stations.get(asked.from)
    if (!station) return undefined
    const [lonDeg, latDeg] = station.position
    last.ids ??= {
      station: newStationId(settled),
      line: newLineId(settled),
      circuit: newCircuitId(settled),
    }
    const { ids } = last
    const known = store.withChosen(store.withChosen(settled, 'wires', asked.wire), 'sets', asked.set)
    const plan = withFurther(known, {
      ...asked,
      ids,
      name: FURTHER_NAME,
      to: [lonDeg, latDeg + (latDeg > 0 ? -SOMEWHERE_DEG : SOMEWHERE_DEG)],
      bends: [],
      supply: equipmentUsedLast(store, settled).supply,
    })
    return { plan, line: ids.line, from: station.position, laidM: 0, measured: measurePlan(plan, ground) }
  }
}
