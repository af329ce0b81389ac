import { CHECKS } from './checks'
import type { CircuitModel } from './circuit-model'
import type { Conditions } from './conditions'
import type { CircuitRows } from './rows'

/** Every figure of a circuit under the given conditions. */
export const circuitRows = (model: CircuitModel, conditions: Conditions): CircuitRows => ({
  loop: CHECKS.loop.rows(model, conditions),
  ringing: CHECKS.ringing.rows(model, conditions),
  voice: CHECKS.voice.rows(model, conditions),
})
