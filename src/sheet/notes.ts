import { isolated } from '../isolated'
import { type Circuit, type Line, stationName } from '../plan/plan'
import { nameIn } from '../words/tongue'
import { lineNumber } from './line-marks'
import type { PaperSource } from './paper-source'

/** What a file says in a member `note` of something that the format gives none: kept as it was, and printed. */
const noteIn = (unknown: Circuit['unknown']): string =>
  typeof unknown?.note === 'string' ? unknown.note.trim() : ''

const told = (whose: string, note: string): readonly string[] => (note ? [`${whose}: ${isolated(note)}`] : [])

/** The notes of a line, of its legs and of its two stations, each with whose it is. */
export function lineNotes(source: PaperSource, line: Line): readonly string[] {
  const { plan } = source
  return [
    ...told(`Line ${lineNumber(source, line.id)}`, noteIn(line.unknown?.properties)),
    ...[line.from, line.to].flatMap((id) =>
      told(stationName(plan, id), plan.stations.get(id)?.note.trim() ?? ''),
    ),
  ]
}

/** The notes of a circuit and of its supply. */
export function circuitNotes({ plan }: PaperSource, circuit: Circuit): readonly string[] {
  const { supply } = circuit
  return [
    ...told(nameIn(plan, circuit.id), noteIn(circuit.unknown)),
    ...(supply ? told(nameIn(plan, supply.type), noteIn(supply.unknown)) : []),
  ]
}
