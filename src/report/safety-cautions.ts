import type { Catalog } from '../catalog/catalog'
import type { Circuit, Line, Plan } from '../plan/plan'
import type { Caution } from './report'

/** Above this, alternating or direct, bare ends are a shock to reckon with: 42.4 V peak is 30 V rms, IEC 60950-1 SELV. */
const SAFE_RMS_VOLTS = 30
/** The same for direct current: IEC 60950-1 SELV. */
const SAFE_DC_VOLTS = 60

const local = 'The local code governs; where it asks for a licensed person, get one.'

/** What could hurt someone on any net, and what this plan's own sets, supplies and lines add to it. */
export function safetyCautions(plan: Plan, catalog: Catalog): Caution[] {
  if (plan.lines.size === 0) return []
  const cautions: Caution[] = []
  for (const circuit of plan.circuits.values()) cautions.push(...shockCautions(circuit, catalog))
  for (const line of plan.lines.values()) cautions.push(...earthCautions(line))
  cautions.push(
    {
      code: 'power-lines',
      where: '',
      text: `Keep wire, poles and people clear of power lines; cross them square and beneath, and only with their owner’s word. ${local}`,
    },
    {
      code: 'lightning',
      where: '',
      text: 'Stay off the line, off poles and off ridges when thunder is near; disconnect and earth the pair before the storm.',
    },
    {
      code: 'road-and-rail',
      where: '',
      text: `Ask the road’s or the railway’s owner before crossing, post someone to stop traffic, and leave no slack on rails. ${local}`,
    },
    {
      code: 'public-network',
      where: '',
      text: 'Never join this net to a public network unless a licensed person does it with approved equipment.',
    },
  )
  return cautions
}

function shockCautions(circuit: Circuit, catalog: Catalog): Caution[] {
  const supply = circuit.supply ? catalog.supplies.get(circuit.supply.type) : undefined
  const cranks = [...circuit.sets.values()].map((type) => catalog.sets.get(type)?.generator?.volts ?? 0)
  const ringVolts = Math.max(0, supply?.ring?.volts ?? 0, ...cranks)
  const cautions: Caution[] = []
  if (ringVolts > SAFE_RMS_VOLTS) {
    cautions.push({
      code: 'ringing-shock',
      where: circuit.id,
      text: `${circuit.name}: ringing puts up to ${Math.round(ringVolts)} V on the pair. Nobody rings while someone holds bare ends.`,
    })
  }
  if (supply && supply.volts > SAFE_DC_VOLTS) {
    cautions.push({
      code: 'dc-shock',
      where: circuit.id,
      text: `${circuit.name}: the supply puts ${supply.volts} V on the pair. Switch it off before work on the line. ${local}`,
    })
  }
  return cautions
}

function earthCautions(line: Line): Caution[] {
  if (line.return !== 'earth') return []
  return [
    {
      code: 'earth-return',
      where: line.id,
      text: 'Earth return picks up power hum and stray voltage, and lightning finds it: a pair is better. Keep people and animals off the electrodes.',
    },
  ]
}
