import { BUILT_IN } from '../catalog/built-in'
import { bad, ok, type Result } from '../problem'
import { limitFault } from '../schema/limit'
import type { CircuitId, StationId } from './id'
import { LIMITS } from './limits'
import { DEFAULT_ELECTRODE_OHMS, type Over, type Plan } from './plan'
import { type RidingFault, ridingFaults } from './riding-faults'
import { withCircuit } from './with-feature'

/** What circuits that ride on others say against themselves in a plan. */
export function ridersOf(plan: Plan): readonly RidingFault[] {
  const kinds = new Map([...BUILT_IN.supplies, ...plan.catalog.supplies].map(({ id, kind }) => [id, kind]))
  return ridingFaults([...plan.circuits.values()], {
    lineOf: (id) => plan.lines.get(id),
    supplyKind: (type) => kinds.get(type),
  })
}

/** A changed plan, unless its riders say against themselves what they did not before. */
export function withSoundRiders(before: Plan, after: Plan): Result<Plan> {
  const faults = ridersOf(after)
  if (faults.length === 0 || ridersOf(before).length > 0) return ok(after)
  return bad(
    ...faults.map(({ code, circuit, member, message }) => {
      const line = /^lines\[(\d+)\]$/.exec(member)?.[1]
      const at = line === undefined ? circuit : after.circuits.get(circuit)!.lines[Number(line)]!
      return { code, at, message }
    }),
  )
}

/**
 * Lays a circuit over two pairs of its lines, or over one and the earth, or gives it a pair of its own again. A simplex gets an electrode
 * at each set that has none yet. Refused where the lines have too few pairs, or direct current would have to pass a coil.
 */
export function setOver(plan: Plan, id: CircuitId, over: Over | 'pair'): Result<Plan> {
  const circuit = plan.circuits.get(id)
  if (!circuit || (circuit.over ?? 'pair') === over) return ok(plan)
  const { over: _, ...own } = circuit
  if (over === 'pair') {
    const full = circuit.lines.flatMap((line) => {
      const { pairs } = plan.lines.get(line)!
      const beside = [...plan.circuits.values()].filter((each) => !each.over && each.lines.includes(line))
      return beside.length < pairs ? [] : [line]
    })
    const message = `${circuit.name} needs a pair of its own on each of its lines, and not all have one to spare: give them another pair first.`
    if (full.length > 0) return bad({ code: 'no-spare-pair', at: full[0]!, message })
    return withSoundRiders(plan, withCircuit(plan, own))
  }
  const rods = [...circuit.sets.keys()].map((at) => [
    at,
    circuit.electrodeOhms?.[at] ?? DEFAULT_ELECTRODE_OHMS,
  ])
  const electrodeOhms = over === 'simplex' ? { electrodeOhms: Object.fromEntries(rods) } : {}
  return withSoundRiders(plan, withCircuit(plan, { ...own, ...electrodeOhms, over }))
}

/** Sets the resistance of the electrode of a simplex at one station, Ω. */
export function setElectrode(plan: Plan, id: CircuitId, at: StationId, ohms: number): Result<Plan> {
  const circuit = plan.circuits.get(id)
  const fault = limitFault(LIMITS.electrodeOhms, ohms)
  if (fault) return bad({ code: 'out-of-range', at: id, message: fault })
  if (!circuit || circuit.electrodeOhms?.[at] === ohms) return ok(plan)
  return ok(withCircuit(plan, { ...circuit, electrodeOhms: { ...circuit.electrodeOhms, [at]: ohms + 0 } }))
}
