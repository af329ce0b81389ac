import { bells, type Circuit, ladder } from './netlist'
import type { PlanFile } from './random-plan'
import type { simulator } from './volts-at'

type VoltsAt = Awaited<ReturnType<typeof simulator>>

/** The supply of a random plan, and sets behind their drops, as ideal piecewise-linear sources of current. */
function cardsOf(
  supply: PlanFile,
  at: string,
  sets: Readonly<Record<string, PlanFile>>,
  call: readonly string[],
): readonly string[] {
  const open = Math.max(0, supply.volts - (supply.indicator?.forwardVolts ?? 0))
  const own = supply.ohms + (supply.indicator?.ohms ?? 0)
  const most = supply.maxMA === undefined ? 1e3 : supply.maxMA / 1000
  const carrier = supply.kind === 'series' ? sets[at].offHook : { dcOhms: 0, dropVolts: 0 }
  const drop = carrier.dropVolts ?? 0
  const free = `(${open} - V(${at}) - ${drop})/${own + carrier.dcOhms}`
  return [
    `Bsupply 0 ${at} I = min(${drop > 0 ? `max(${free}, 0)` : free}, ${most})`,
    ...call
      .filter((id) => supply.kind !== 'series' || id !== at)
      .map((id) => {
        const { dcOhms, dropVolts = 0 } = sets[id].offHook
        return `Bset_${id} ${id} 0 I = max(V(${id}) - ${dropVolts}, ${dropVolts > 0 ? 0 : -1e6})/${dcOhms}`
      }),
  ]
}

/** Current through each of the sets off hook, mA, in their order; all others are on hook. */
export async function callMA(
  circuit: Circuit,
  supply: PlanFile,
  at: string,
  call: readonly string[],
  volts: VoltsAt,
  perNeper?: number,
): Promise<readonly number[]> {
  const cards = [
    ...ladder(circuit, 0, perNeper),
    ...bells(circuit, call, 0),
    ...cardsOf(supply, at, circuit.sets, call),
  ]
  const found = await volts(cards, [...call, at], 0)
  const atSupply = found.at(-1)!
  return call.map((id, k) => {
    const { dcOhms, dropVolts = 0 } = circuit.sets[id].offHook
    if (supply.kind !== 'series' || id !== at)
      return (1000 * Math.max(found[k]! - dropVolts, dropVolts > 0 ? 0 : -1e6)) / dcOhms
    const open = Math.max(0, supply.volts - (supply.indicator?.forwardVolts ?? 0))
    const ohms = supply.ohms + (supply.indicator?.ohms ?? 0) + dcOhms
    const mA = (1000 * (open - atSupply - dropVolts)) / ohms
    return Math.min(dropVolts > 0 ? Math.max(mA, 0) : mA, supply.maxMA ?? 1e6)
  })
}
