import type { Catalog } from '../catalog/catalog'
import { memoryOfEach } from '../memo'
import type { Circuit, Plan } from '../plan/plan'
import type { Caution } from './caution'

/** Above this, alternating or direct, bare ends are a shock to reckon with: 42.4 V peak is 30 V rms, IEC 60950-1 SELV. */
const SAFE_RMS_VOLTS = 30
/** The same for direct current: IEC 60950-1 SELV. */
const SAFE_DC_VOLTS = 60

/** What could hurt someone on any net, and what this plan's own sets, supplies and lines add to it. */
export function safetyCautions(plan: Plan, catalog: Catalog): Caution[] {
  if (plan.lines.size === 0) return []
  const cautions: Caution[] = []
  for (const circuit of plan.circuits.values()) cautions.push(...shockCautions(circuit, catalog))
  for (const line of plan.lines.values())
    if (line.return === 'earth') cautions.push({ code: 'earth-return', where: line.id })
  for (const code of ['power-lines', 'lightning', 'road-and-rail', 'public-network'] as const)
    cautions.push({ code, where: '' })
  return cautions
}

const remembered = memoryOfEach<Circuit, readonly Caution[]>()
const shockCautions = (circuit: Circuit, catalog: Catalog): readonly Caution[] =>
  remembered(circuit, [catalog], () => shocksOf(circuit, catalog))

function shocksOf(circuit: Circuit, catalog: Catalog): Caution[] {
  const supply = circuit.supply ? catalog.supplies.get(circuit.supply.type) : undefined
  const cranks = [...circuit.sets.values()].map((type) => catalog.sets.get(type)?.generator?.volts ?? 0)
  const ringVolts = Math.max(0, supply?.ring?.volts ?? 0, supply?.generator?.volts ?? 0, ...cranks)
  const cautions: Caution[] = []
  if (ringVolts > SAFE_RMS_VOLTS)
    cautions.push({ code: 'ringing-shock', where: circuit.id, volts: ringVolts })
  if (supply && supply.volts > SAFE_DC_VOLTS)
    cautions.push({ code: 'dc-shock', where: circuit.id, volts: supply.volts })
  return cautions
}
