import type { Known } from '../../src/fault/evidence'
import { measurePlan } from '../../src/measure/measure-line'
import { circuitNetwork } from '../../src/report/circuit-network'
import { laidCatalog } from '../../src/report/learned-of'
import { fieldPlan } from '../field/field-plan'
import type { simulator } from '../simulator/volts-at'
import { BOOK, type Look, type Planted, shown } from './planted'

export type Volts = Awaited<ReturnType<typeof simulator>>

/** The network as the plan has it: the book's figures and spreads, and nothing of the fault. */
export function modelOf({ lines, weather }: Planted) {
  const plan = fieldPlan(lines, { wires: [BOOK], plan: { weather, wireTempC: 20 } })
  const measured = measurePlan(plan)
  const circuit = plan.circuits.values().next().value!
  return { plan, model: circuitNetwork(plan, circuit, laidCatalog(plan, measured), measured) }
}

/** A reading with the meter's error in it. */
export async function take(fault: Planted, look: Look, volts: Volts): Promise<Known> {
  const value = (await shown(fault, look, volts)) * fault.error()
  const { stand, toward, far, what } = look
  const read = { what, far, value, meterPct: fault.meterPct, tempC: fault.tempC, weather: fault.weather }
  return { ...stand, toward, ...read } as Known
}

/** What a crew reads first: from every end of the net, what tells most of such a fault. */
export function looksAt(fault: Planted): readonly Look[] {
  const starts = new Set(fault.lines.map(({ from }) => from))
  const ends = fault.lines.map(({ to }) => to).filter((station) => !starts.has(station))
  const of = (far: 'open' | 'short', what: 'loopOhms' | 'nanoF'): readonly Look[] => [
    { stand: { at: 's0' }, toward: ends.at(-1)!, far, what },
    ...ends.map((at) => ({ stand: { at }, toward: 's0', far, what })),
  ]
  switch (fault.kind) {
    case 'short':
      return of('open', 'loopOhms')
    case 'open':
      return [...of('open', 'nanoF'), ...of('short', 'loopOhms')]
    case 'leak':
      return [...of('open', 'loopOhms'), ...of('short', 'loopOhms')]
    case 'resistance':
      return of('short', 'loopOhms')
  }
}
