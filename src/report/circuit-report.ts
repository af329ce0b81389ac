import { type CircuitModel, circuitModel } from '../budget/circuit-model'
import { circuitRows } from '../budget/circuit-rows'
import { completenessOf } from '../budget/completeness'
import { type Conditions, conditionsOf } from '../budget/conditions'
import { worstCorner } from '../budget/envelope'
import { reachOf } from '../budget/reach'
import type { CircuitRows } from '../budget/rows'
import { trunksAt } from '../budget/trunk-ends'
import { checkText, verdictOf } from '../budget/verdict'
import type { Catalog } from '../catalog/catalog'
import type { MeasuredLine } from '../measure/measured'
import { memoryOfEach } from '../memo'
import type { LineId } from '../plan/id'
import type { Circuit, Plan } from '../plan/plan'
import { circuitsWithCoils } from '../plan/riding'
import type { Reach, ReportCircuit } from './report'
import { switchboardOf } from './switchboard'

const remembered = memoryOfEach<Circuit, ReportCircuit>()

/**
 * One circuit of the report, without remedies. A circuit that no edit touched is not reckoned again; and how far it could go, which takes
 * as long as all else, is reckoned when somebody asks.
 */
export function circuitReport(
  plan: Plan,
  circuit: Circuit,
  catalog: Catalog,
  measured: ReadonlyMap<LineId, MeasuredLine>,
  splices?: ReadonlyMap<LineId, number>,
): ReportCircuit {
  return remembered(circuit, inputsOf(plan, circuit, catalog, measured, splices), () =>
    reckon(
      circuit,
      circuitModel(plan, circuit, catalog, measured, splices),
      conditionsOf(plan.weather, plan.wireTempC),
    ),
  )
}

/** Everything that a circuit's figures depend on, by identity. */
function inputsOf(
  plan: Plan,
  circuit: Circuit,
  catalog: Catalog,
  measured: ReadonlyMap<LineId, MeasuredLine>,
  splices?: ReadonlyMap<LineId, number>,
): unknown[] {
  const { spliceOhms, spliceMicroS, coil } = plan.allowances
  const inputs: unknown[] = [plan.weather, plan.wireTempC, catalog, spliceOhms, spliceMicroS, coil]
  const trunks = trunksAt(plan, circuit, catalog)
  inputs.push(circuitsWithCoils(plan).has(circuit.id))
  for (const ends of trunks ? [trunks.from, trunks.to] : [])
    inputs.push(ends.length, ...ends.flatMap(({ circuit: id, at }) => [id, at]))
  for (const id of circuit.lines) inputs.push(plan.lines.get(id), measured.get(id), splices?.get(id))
  return inputs
}

function reckon(circuit: Circuit, model: CircuitModel, today: Conditions): ReportCircuit {
  const { missing, notes } = completenessOf(model, today)
  const rows = circuitRows(model, today)
  const worst = worstCorner(model, today, missing, rows)
  const reachToday = whenAsked(() => reach(model, today, rows))
  const worstReach = whenAsked(() => reach(model, worst.conditions, worst.rows))
  return {
    id: circuit.id,
    name: circuit.name,
    verdict: verdictOf(rows, missing),
    ...rows,
    get reach() {
      return reachToday()
    },
    missing,
    notes,
    worst: {
      verdict: worst.verdict,
      weather: worst.conditions.weather,
      wireTempC: worst.conditions.wireTempC,
      limitedBy: worst.least ? checkText(worst.least.check) : '',
      check: worst.least?.check ?? null,
      ...worst.rows,
      get reach() {
        return worstReach()
      },
    },
    remedies: [],
    ...switchboardOf(model, rows),
  }
}

function whenAsked<T>(reckon: () => T): () => T {
  let found: { readonly value: T } | undefined
  return () => {
    found ??= { value: reckon() }
    return found.value
  }
}

function reach(model: CircuitModel, conditions: Conditions, rows: CircuitRows): Reach {
  const { factor, check } = reachOf(model, conditions, rows)
  return { factor, limitedBy: check ? checkText(check) : '', check }
}
