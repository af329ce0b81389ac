import type { FaultFound } from '../fault/locate'
import type { MeasuredLine } from '../measure/measured'
import { pointAtWireM } from '../measure/place-on-line'
import type { LineId } from '../plan/id'
import type { Plan } from '../plan/plan'
import { bandSentence, kindSentence, nextSentence, placeSentence, unusedSentence } from './found-words'
import { tongueOf } from './tongue'

/** What was found of a fault as the command line prints it and its contract has it, in metric English. */
export function faultInWords(plan: Plan, measured: ReadonlyMap<LineId, MeasuredLine>, found: FaultFound) {
  const say = tongueOf(plan, 'metric')
  return {
    says: kindSentence(found),
    kinds: found.kinds,
    toEarth: found.toEarth,
    ...(found.wires && { wires: found.wires }),
    nothingWrong: found.nothingWrong,
    several: found.several,
    places: found.places.map((place) => {
      const { line, fromM, toM, chance, middleM } = place
      const id = line as LineId
      const { position } = pointAtWireM(plan, measured.get(id)!, plan.lines.get(id)!, middleM)
      const [lon, lat] = position
      return { line, fromM, toM, chance, lon, lat, middleM, says: placeSentence(plan, measured, place, say) }
    }),
    band: found.band && { ...found.band, says: bandSentence(plan, found.band, say) },
    ...(found.unused.length > 0 && {
      unused: found.unused.map((index) => ({ evidence: index, says: unusedSentence(index) })),
    }),
    next: found.next.map((step) => ({ do: nextSentence(plan, measured, step, say), ...step })),
  }
}
