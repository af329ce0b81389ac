import { EVIDENCE, type Evidence } from '../fault/evidence'
import { stationsOfCircuit } from '../plan/circuit-topology'
import { valueFault } from '../plan/field-schema'
import type { Circuit, Plan } from '../plan/plan'
import { standingRecords } from '../plan/standing-records'
import { bad, ok, type Problem, type Result } from '../problem'
import { faultsOf } from '../schema/faults'
import { taken } from '../schema/kept'
import { isObject } from '../schema/schema'
import { parseJson } from './json-text'
import { textOf } from './text-bytes'

/** The bytes of a file of evidence about one circuit, or all that is wrong with it. */
export function parseEvidence(bytes: Uint8Array, plan: Plan, circuit: Circuit): Result<readonly Evidence[]> {
  const text = textOf(bytes)
  if (!text.ok) return text
  const json = parseJson(text.value)
  if (!json.ok) return json
  const known = {
    station: new Set(stationsOfCircuit(plan, circuit)),
    line: new Set(circuit.lines),
    circuit: new Set([...plan.circuits.keys()].filter((id) => id !== circuit.id)),
    record: new Set(standingRecords(plan).map(({ id }) => id)),
  }
  const faults = [...faultsOf(EVIDENCE, json.value, 'evidence', known)]
  if (faults.length === 0) faults.push(...againstItself(json.value as readonly unknown[]))
  return faults.length > 0 ? bad(...faults) : ok(taken(EVIDENCE, json.value))
}

const OHMS: ReadonlySet<unknown> = new Set(['loopOhms', 'kOhms'])

/** What evidence of sound members says against itself. */
function againstItself(list: readonly unknown[]): readonly Problem[] {
  return list.flatMap((each, index): Problem[] => {
    if (!isObject(each)) return []
    const at = `evidence[${index}]`
    const negative = valueFault(each)
    if (negative) return [{ code: 'out-of-range', at: `${at}.value`, message: negative }]
    if (typeof each.at === 'string' && each.line === undefined && each.at === each.toward) {
      const message = 'The meter stands at the station that it looks to: name the station at the other end.'
      return [{ code: 'no-way', at: `${at}.toward`, message }]
    }
    if (isObject(each.echo) && each.echo.ns === undefined && !(each.echo.m && each.echo.velocityPct)) {
      const message =
        'The echo says neither its time nor its distance: give "ns", or "m" with the "velocityPct" that the instrument is set to.'
      return [{ code: 'no-echo', at: `${at}.echo`, message }]
    }
    if (each.wire !== undefined && !(OHMS.has(each.what) && each.far !== 'set')) {
      const message =
        'One wire is measured against the earth in "loopOhms" or "kOhms", with the far end "open", or "short" for joined to the earth there.'
      return [{ code: 'no-such-reading', at: `${at}.wire`, message }]
    }
    const two = each.rings ?? each.hears
    if (Array.isArray(two) && two[0] === two[1]) {
      const message = 'Both stations are the same: name two.'
      return [{ code: 'no-way', at: `${at}.${each.rings ? 'rings' : 'hears'}`, message }]
    }
    if (Array.isArray(each.murray) && each.murray[0] + each.murray[1] <= 0) {
      const message =
        'Both arms of the bridge are 0: give the arm at the faulty wire and the arm at the good one.'
      return [{ code: 'no-bridge', at: `${at}.murray`, message }]
    }
    const { fromM, toM } = isObject(each.sound) ? each.sound : {}
    if (typeof fromM === 'number' && typeof toM === 'number' && fromM > toM) {
      const message = `The stretch begins at ${fromM} m and ends at ${toM} m: give the nearer end first.`
      return [{ code: 'turned-round', at: `${at}.sound.toM`, message }]
    }
    return []
  })
}
