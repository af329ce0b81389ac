import type { CircuitId, HazardId, LineId, StationId } from '../plan/id'
import type { Plan } from '../plan/plan'

const ALPHABET = '0123456789abcdefghjkmnpqrstvwxyz'
const LENGTH = 6

/** The one use of chance in the program: ids for what is drawn. Edits are handed them. */
function newId(plan: Plan, kind: string): string {
  const taken = [plan.stations, plan.lines, plan.hazards, plan.circuits] as readonly ReadonlyMap<
    string,
    unknown
  >[]
  const foreign = new Set(plan.unknown?.features?.map((feature) => (feature as { id?: unknown }).id))
  for (;;) {
    const bytes = crypto.getRandomValues(new Uint8Array(LENGTH))
    const id = `${kind}-${Array.from(bytes, (byte) => ALPHABET[byte % ALPHABET.length]).join('')}`
    if (!foreign.has(id) && !taken.some((map) => map.has(id))) return id
  }
}

export const newStationId = (plan: Plan): StationId => newId(plan, 'station') as StationId
export const newLineId = (plan: Plan): LineId => newId(plan, 'line') as LineId
export const newHazardId = (plan: Plan): HazardId => newId(plan, 'hazard') as HazardId
export const newCircuitId = (plan: Plan): CircuitId => newId(plan, 'circuit') as CircuitId
