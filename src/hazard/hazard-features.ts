import { HAZARD_KINDS } from '../plan/hazard-schema'
import type { HazardId } from '../plan/id'
import type { Hazard, HazardKind } from '../plan/plan'
import { HAZARDS } from './kinds'

/** A line or an area from a file, with what the file says about it as text. */
export interface HazardFeature {
  readonly geometry: Hazard['geometry']
  readonly properties: Readonly<Record<string, string>>
}

/** A property of the file's features: its values, the commonest first, and how many features have each. */
export interface FeatureProperty {
  readonly name: string
  readonly values: readonly { readonly value: string; readonly count: number }[]
}

/** What a file holds that can become hazards. */
export interface HazardFeatures {
  readonly features: readonly HazardFeature[]
  readonly properties: readonly FeatureProperty[]
  /** Points and features without a place: they can be no hazard. */
  readonly leftOut: number
}

/** How a file's features become hazards; what is given no kind is left out. */
export interface HazardMapping {
  /** Properties that tell kinds apart: of each feature the first that does. */
  readonly properties: readonly string[]
  readonly kindOf: (property: string, value: string) => HazardKind | undefined
  /** The kind of all features where no property tells them apart. */
  readonly ofAll?: HazardKind | undefined
  /** The property that holds the names; none where it is undefined. */
  readonly nameProperty?: string | undefined
}

/** The first whose words fit is meant. */
const KINDS_AS_KNOWN = Object.keys(HAZARDS) as HazardKind[]

function kindOfWord(word: string): HazardKind | undefined {
  const plain = word.trim().toLowerCase()
  const own = HAZARD_KINDS.find((kind) => plain === kind || plain === kind.replace('-', ' '))
  return own ?? KINDS_AS_KNOWN.find((kind) => HAZARDS[kind].known.test(plain))
}

/** The kind that a value of a property most likely means: by the value's own word, else by the property's. */
export const likelyKind = (property: string, value: string): HazardKind | undefined =>
  kindOfWord(value) ?? kindOfWord(property)

/** A property with more values names things; it does not tell kinds apart. */
const MOST_VALUES = 40

/** Properties that may tell kinds apart. */
export const fewValued = ({ properties }: HazardFeatures): readonly FeatureProperty[] =>
  properties.filter(({ values }) => values.length <= MOST_VALUES)

/**
 * The properties that most likely tell kinds apart: `hazard` alone; else every one that is named after a kind, then every one
 * whose values mostly are.
 */
export function tellingProperties(features: HazardFeatures): readonly FeatureProperty[] {
  const properties = fewValued(features).filter(({ name }) => !/name|^ref$|^note$/i.test(name))
  const own = properties.find(({ name }) => name === 'hazard')
  if (own) return [own]
  const isNamed = ({ name }: FeatureProperty) => kindOfWord(name) !== undefined
  const isKnown = ({ values }: FeatureProperty) => {
    const sum = (entries: FeatureProperty['values']) => entries.reduce((total, { count }) => total + count, 0)
    return sum(values.filter(({ value }) => kindOfWord(value))) * 2 >= sum(values)
  }
  return [...properties.filter(isNamed), ...properties.filter((each) => !isNamed(each) && isKnown(each))]
}

/** The kind that a mapping gives a feature. */
export function kindOfFeature(feature: HazardFeature, mapping: HazardMapping): HazardKind | undefined {
  if (mapping.properties.length === 0) return mapping.ofAll
  for (const property of mapping.properties) {
    const value = feature.properties[property]
    const kind = value === undefined ? undefined : mapping.kindOf(property, value)
    if (kind) return kind
  }
  return undefined
}

/** The hazards that a mapping makes of the features. */
export function hazardsFrom(
  { features }: HazardFeatures,
  mapping: HazardMapping,
  newId: () => HazardId,
): Hazard[] {
  const { nameProperty } = mapping
  return features.flatMap((feature) => {
    const hazard = kindOfFeature(feature, mapping)
    if (!hazard) return []
    const name = (nameProperty && feature.properties[nameProperty]) || ''
    return [{ id: newId(), hazard, name, geometry: feature.geometry }]
  })
}
