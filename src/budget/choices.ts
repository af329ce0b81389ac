import type { Supply } from '../catalog/supply'
import type { Wire } from '../catalog/wire'
import type { CircuitModel } from './circuit-model'
import { completenessOf } from './completeness'
import type { Conditions } from './conditions'
import { worstCorner } from './envelope'
import { type ReachResult, reachOf } from './reach'
import type { TakeFigure } from './rows'
import { eachVoice } from './voice-loss'

/** What one choice would give: how far the circuit could go with it. */
export interface Choice {
  readonly id: string
  readonly name: string
  readonly today: ReachResult
  readonly worst: ReachResult
  /** Whether anything would ring. */
  readonly rings: boolean
  /** Whether the circuit would have all that it cannot do without. */
  readonly complete: boolean
}

function choiceOf(
  model: CircuitModel,
  conditions: Conditions,
  { id, name }: { id: string; name: string },
): Choice {
  const { missing } = completenessOf(model, conditions)
  const worst = worstCorner(model, conditions, missing)
  return {
    id,
    name,
    today: reachOf(model, conditions),
    worst: reachOf(model, worst.conditions, worst.rows),
    rings: worst.rows.ringing.length > 0,
    complete: missing.length === 0,
  }
}

/** Reach of a circuit with each wire on all its lines. */
export const reachByWire = (model: CircuitModel, conditions: Conditions, wires: Iterable<Wire>): Choice[] =>
  [...wires].map((wire) =>
    choiceOf({ ...model, lines: model.lines.map((line) => ({ ...line, wire })) }, conditions, wire),
  )

/** Reach of a circuit with each supply where its own stands; empty where it has none. */
export const reachBySupply = (
  model: CircuitModel,
  conditions: Conditions,
  supplies: Iterable<Supply>,
): Choice[] =>
  model.supply
    ? [...supplies].map((supply) =>
        choiceOf({ ...model, supply: { node: model.supply!.node, supply } }, conditions, supply),
      )
    : []

/** The telephone band, Hz: ITU-T G.712 gives 300 to 3400 Hz. */
export const TELEPHONE_BAND_HZ = [300, 400, 500, 700, 1000, 1400, 2000, 2800, 3400] as const

/** Insertion loss between two sets against frequency, dB; over the telephone band where none is named. */
export function lossAgainstHz(
  model: CircuitModel,
  conditions: Conditions,
  from: string,
  to: string,
  band: readonly number[] = TELEPHONE_BAND_HZ,
): { readonly hz: number; readonly lossDb: number }[] {
  return band.flatMap((hz) => {
    const found: { hz: number; lossDb: number }[] = []
    const take: TakeFigure = (a, b, _, lossDb) => {
      if (a === from && b === to) found.push({ hz, lossDb })
    }
    eachVoice(model, conditions, take, hz)
    return found.slice(0, 1)
  })
}
