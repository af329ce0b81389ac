import { BUILT_IN } from '../catalog/built-in'
import type { Plan } from '../plan/plan'
import { oneOf } from '../plan/shape'
import { bad, ok, type Problem, type Result } from '../problem'
import { valueWords } from '../schema/limit'
import { isObject, type Members, MOST_FAULTS } from '../schema/schema'
import { rememberExact } from './exact-members'
import { parseJson } from './json-text'
import { knownIds } from './known-ids'
import { parseCircuits } from './parse-circuits'
import { featuresOf, parseFeatures } from './parse-features'
import { parseSettings } from './parse-settings'
import { repeatedNames } from './repeated-names'
import { textOf } from './text-bytes'
import { restMember, restOf } from './unknown-members'

export const FORMAT = 'fieldpair-plan'
export const VERSION = 1

/** The bytes of a plan file to a plan, or to all that is wrong with it. */
export function parsePlanBytes(bytes: Uint8Array): Result<Plan> {
  const text = textOf(bytes)
  return text.ok ? parsePlan(text.value) : text
}

/** The text of a plan file to a plan, or to all that is wrong with it, each fault with its place in the file. */
export function parsePlan(text: string): Result<Plan> {
  const json = parseJson(text)
  if (!json.ok) return json
  const stranger = strangerFault(json.value)
  if (stranger) return bad(stranger)
  const file = json.value as Members & { readonly plan: Members }

  const faults: Problem[] = []
  rememberExact(json.value, text)
  repeatedNames(text, faults)
  oneOf('The type', ['FeatureCollection'])(file.type, 'type', faults)
  const features = featuresOf(file.features, faults)
  const known = knownIds(features, file.plan, BUILT_IN)
  const settings = parseSettings(file.plan, known, faults)
  const { stations, lines, hazards, foreign, ends } = parseFeatures(features, known, faults)
  // With no features every line of a circuit would be told as missing.
  const circuitsKnown = Array.isArray(file.features) && file.plan.circuits !== undefined
  const supplies = new Map(
    [...BUILT_IN.supplies, ...settings.catalog.supplies].map(({ id, kind }) => [id, kind]),
  )
  const circuits = parseCircuits(
    circuitsKnown ? file.plan.circuits : [],
    known,
    ends,
    (type) => supplies.get(type),
    faults,
  )
  if (faults.length > 0) return bad(...listed(faults))

  const catalog = isObject(file.plan.catalog) ? file.plan.catalog : {}
  const { rest } = restMember({
    file: restOf(file, ['type', 'plan', 'features']),
    plan: restOf(file.plan, PLAN_MEMBERS),
    catalog: restOf(catalog, ['wires', 'sets', 'supplies']),
  })
  const kept = foreign.length > 0 ? { ...rest, features: foreign } : rest
  return ok({ ...settings, circuits, stations, lines, hazards, ...(kept && { rest: kept }) })
}

const PLAN_MEMBERS = [
  'format',
  'version',
  'title',
  'note',
  'weather',
  'wireTempC',
  'allowances',
  'catalog',
  'circuits',
  'stock',
  'work',
  'papers',
]

/** What makes the file none that can be judged further: no plan at all, or one of another version. */
function strangerFault(file: unknown): Problem | undefined {
  if (!isObject(file) || !isObject(file.plan)) {
    const message = `This is no plan: it has no member "plan". Choose a file that was saved as a plan.`
    return { code: 'no-plan', at: isObject(file) ? 'plan' : 'file', message }
  }
  const { format, version } = file.plan
  if (format !== FORMAT) {
    const message = `The format is ${valueWords(format)}, and a plan's is "${FORMAT}": choose a plan file.`
    return { code: 'no-plan', at: 'plan.format', message }
  }
  if (version === VERSION) return undefined
  const newer = typeof version === 'number' && version > VERSION
  const message = newer
    ? `The plan is of version ${version}, newer than the version ${VERSION} that this program reads: open it with a newer program.`
    : `The version is ${valueWords(version)}: give ${VERSION}.`
  return { code: newer ? 'newer-version' : 'no-plan', at: 'plan.version', message }
}

/** The faults that are told. The file is read no further once there are as many as anybody mends in one go. */
function listed(faults: readonly Problem[]): readonly Problem[] {
  if (faults.length <= MOST_FAULTS) return faults
  const message = `The file has more faults than these ${MOST_FAULTS}, and was read no further: mend these first, then open it again.`
  return [...faults.slice(0, MOST_FAULTS), { code: 'more-faults', at: 'file', message }]
}
