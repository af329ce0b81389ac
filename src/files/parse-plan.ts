import { BUILT_IN } from '../catalog/built-in'
import type { Supply } from '../catalog/supply'
import { CIRCUITS } from '../plan/circuit-schema'
import { OWN_ENTRIES } from '../plan/own-entries'
import type { Plan } from '../plan/plan'
import { SETTINGS } from '../plan/settings-schema'
import { bad, ok, type Problem, type Result } from '../problem'
import { rememberExact, unknownOf } from '../schema/exact-members'
import { faultsOf } from '../schema/faults'
import { taken } from '../schema/kept'
import { valueWords } from '../schema/limit'
import { oneOf } from '../schema/plain-values'
import { isObject, type Members, MOST_FAULTS, members } from '../schema/schema'
import { circuitFaults, riderFaults } from './circuit-faults'
import { fieldFaults } from './field-faults'
import { parseJson } from './json-text'
import { knownIds, repeatedIds } from './known-ids'
import { featuresOf, parseFeatures } from './parse-features'
import { repeatedNames } from './repeated-names'
import { textOf } from './text-bytes'

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
  faults.push(...faultsOf(COLLECTION, file, ''))
  const features = featuresOf(file.features, faults)
  const known = knownIds(features, file.plan, BUILT_IN)
  const ofSettings = faultsOf(SETTINGS, file.plan, 'plan', known)
  faults.push(...ofSettings)
  repeatedEntries(file.plan.catalog, faults)
  fieldFaults(file.plan.field, faults)
  const { ends, foreign, ...things } = parseFeatures(features ?? [], known, faults)
  const { length } = faults
  circuitFaults(file.plan.circuits, known, ends, faults)
  const circuitsAreSound =
    faults.length === length && !ofSettings.some(({ at }) => at.startsWith(CIRCUITS_AT))
  if (circuitsAreSound)
    riderFaults(taken(CIRCUITS, file.plan.circuits ?? []), ends, supplyKinds(file.plan), faults)
  if (faults.length > 0) return bad(...listed(faults))

  const { unknown: ofPlan, ...settings } = taken(SETTINGS, file.plan)
  const { unknown: ofCatalog, ...catalog } = settings.catalog
  const { format: _, version: __, ...others } = ofPlan ?? {}
  const ofFile = unknownOf(file, { type: 0, plan: 0, features: 0 })
  const unknown = {
    ...(ofFile && { file: ofFile }),
    ...(Object.keys(others).length > 0 && { plan: others }),
    ...(ofCatalog && { catalog: ofCatalog }),
    ...(foreign.length > 0 && { features: foreign }),
  }
  return ok({ ...settings, catalog, ...things, ...(Object.keys(unknown).length > 0 && { unknown }) })
}

const COLLECTION = members('The file', { type: oneOf('The type', ['FeatureCollection']) })
const CIRCUITS_AT = 'plan.circuits'

function repeatedEntries(catalog: unknown, faults: Problem[]): void {
  for (const name of Object.keys(OWN_ENTRIES.entries)) {
    const list = isObject(catalog) ? catalog[name] : undefined
    if (Array.isArray(list)) repeatedIds(list, `plan.catalog.${name}`, faults)
  }
}

/** The kind of each supply that the file may name; its own hides the built-in one of its id. */
function supplyKinds({ catalog }: Members): (type: string) => Supply['kind'] | undefined {
  const own = isObject(catalog) && Array.isArray(catalog.supplies) ? catalog.supplies.filter(isObject) : []
  const kinds = new Map(
    [...BUILT_IN.supplies, ...(own as unknown as Supply[])].map(({ id, kind }) => [id, kind]),
  )
  return (type) => kinds.get(type)
}

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
