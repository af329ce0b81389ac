import type { Supply } from '../catalog/supply'
import { valueWords } from '../schema/limit'
import type { CircuitId, LineId, StationId } from './id'
import type { Circuit, Line } from './plan'
import { pairsUnder, riddenBy } from './riding'

/** What is amiss with circuits that ride on others, and at which member of which circuit. */
export interface RidingFault {
  readonly code: 'too-few-pairs' | 'earth-under-rider' | 'dc-through-coil' | 'missing'
  readonly circuit: CircuitId
  readonly member: `lines[${number}]` | 'supply' | 'electrodeOhms'
  readonly message: string
  /** The rider, or those whose coils the current would have to pass. */
  readonly riders: readonly CircuitId[]
}

interface Around {
  readonly lineOf: (id: LineId) => Pick<Line, 'pairs' | 'return'> | undefined
  readonly supplyKind: (type: string) => Supply['kind'] | undefined
}

/** A supply of any other kind sends direct current, which no coil lets through. */
export const passesCoils = (kind: Supply['kind']): boolean => kind === 'board'

const WORDS = { phantom: 'A phantom', simplex: 'A simplex' } as const

/**
 * What circuits with riders say against themselves: a rider on too few pairs or on a line that returns through the earth, a simplex
 * without its electrodes, a supply whose direct current would have to pass a repeating coil. Empty where no circuit rides.
 */
export function ridingFaults(circuits: readonly Circuit[], { lineOf, supplyKind }: Around): RidingFault[] {
  if (!circuits.some(({ over }) => over)) return []
  const faults: RidingFault[] = []
  const lain = new Map<LineId, number>()
  for (const circuit of circuits) {
    const { over } = circuit
    if (!over) continue
    const say = (code: RidingFault['code'], member: RidingFault['member'], message: string) =>
      faults.push({ code, circuit: circuit.id, member, message, riders: [circuit.id] })
    for (const [k, id] of circuit.lines.entries()) {
      const line = lineOf(id)
      if (!line || circuit.lines.indexOf(id) !== k) continue
      const name = `line ${valueWords(id)}`
      if (line.return === 'earth') {
        const message = `${WORDS[over]} lies over pairs, and ${name} returns through the earth: make it a pair, or take it out.`
        say('earth-under-rider', `lines[${k}]`, message)
        continue
      }
      const before = lain.get(id) ?? 0
      lain.set(id, before + pairsUnder(circuit))
      if (before + pairsUnder(circuit) <= line.pairs) continue
      const has = line.pairs === 1 ? 'one pair' : `${line.pairs} pairs`
      const takes = over === 'phantom' ? 'two pairs' : 'a pair'
      const message = `${WORDS[over]} takes ${takes} of each of its lines, and ${name} has ${has}${before === 0 ? '' : ', on which others ride'}: give it more pairs, or take it out of the circuit.`
      say('too-few-pairs', `lines[${k}]`, message)
    }
    const without = [...circuit.sets.keys()].filter(
      (at: StationId) => circuit.electrodeOhms?.[at] === undefined,
    )
    if (over === 'simplex' && without.length > 0) {
      const message = `A simplex returns through the earth: give the resistance of the electrode at ${without.map(valueWords).join(', ')}.`
      say('missing', 'electrodeOhms', message)
    }
  }
  const ridden = riddenBy(circuits)
  for (const { id, supply, over } of circuits) {
    const kind = supply && supplyKind(supply.type)
    const riders = over ? [id] : [...ridden].flatMap(([rider, below]) => (below.includes(id) ? [rider] : []))
    if (!kind || passesCoils(kind) || riders.length === 0) continue
    const who = riders.map(valueWords).join(' and ')
    const message = `Circuit ${valueWords(id)} ${over ? 'rides on others' : `carries ${who}`}, so that it has a repeating coil at both ends, and direct current does not pass a coil: take the supply off it, and use sets with batteries of their own.`
    faults.push({ code: 'dc-through-coil', circuit: id, member: 'supply', message, riders })
  }
  return faults
}
