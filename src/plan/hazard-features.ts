import type { HazardId } from './id'
import { HAZARD_KINDS, type Hazard, type HazardKind } from './plan'

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

/** Which kind each value of one property means; what is not named is left out. */
export interface HazardMapping {
  readonly property: string
  readonly kinds: ReadonlyMap<string, HazardKind>
  /** The property that holds the names; none where it is undefined. */
  readonly nameProperty?: string | undefined
}

/** Words that maps commonly use, and the kind that each means. Common practice. */
const KIND_WORDS: readonly (readonly [RegExp, HazardKind])[] = [
  [/power|pylon|transmission|high.?voltage/, 'power-line'],
  [/rail|tram/, 'railway'],
  [/track|path|trail|bridleway|footway/, 'track'],
  [/road|street|motorway|trunk|primary|secondary|tertiary|residential|unclassified|service/, 'road'],
  [/water|river|stream|canal|lake|ditch|drain|pond|reservoir/, 'water'],
  [/keep.?out|danger|military|restricted|forbidden|range|private/, 'keep-out'],
]

/** The kind that a word most likely means: a kind's own name, or a common word for one. */
export function likelyKind(word: string): HazardKind | undefined {
  const plain = word.trim().toLowerCase()
  const own = HAZARD_KINDS.find((kind) => plain === kind || plain === kind.replace('-', ' '))
  return own ?? KIND_WORDS.find(([pattern]) => pattern.test(plain))?.[1]
}

/** The property that most likely tells kinds apart: `hazard`, or the one most of whose features a kind is known for. */
export function likelyProperty({ properties }: HazardFeatures): FeatureProperty | undefined {
  const own = properties.find(({ name }) => name === 'hazard')
  if (own) return own
  const known = ({ values }: FeatureProperty) =>
    values.reduce((sum, { value, count }) => sum + (likelyKind(value) ? count : 0), 0)
  const [first] = properties
  return first && properties.reduce((best, each) => (known(each) > known(best) ? each : best), first)
}

/** The hazards that a mapping makes of the features. */
export function hazardsFrom(
  { features }: HazardFeatures,
  { property, kinds, nameProperty }: HazardMapping,
  newId: () => HazardId,
): Hazard[] {
  return features.flatMap(({ geometry, properties }) => {
    const hazard = kinds.get(properties[property] ?? '')
    if (!hazard) return []
    return [{ id: newId(), hazard, name: (nameProperty && properties[nameProperty]) || '', geometry }]
  })
}
