import { parseJson } from '../json-text'
import { textOf } from '../text-bytes'

/** What a file of features is to be read as. What is none is read as a plan, whose reader says what is wrong with it. */
export type FeaturesKind = 'plan' | 'places' | 'hazards'

/** A collection of features without a plan in it holds places where it has points, else what is in the way. */
export function kindOfFeatures(bytes: Uint8Array): FeaturesKind {
  const text = textOf(bytes)
  const json = text.ok ? parseJson(text.value) : text
  const value = json.ok ? json.value : null
  if (typeof value !== 'object' || value === null || 'plan' in value || !('features' in value)) return 'plan'
  return hasPoints(value.features) ? 'places' : 'hazards'
}

const hasPoints = (features: unknown): boolean =>
  Array.isArray(features) &&
  features.some((each: { geometry?: { type?: unknown } } | null) =>
    /Point$/.test(String(each?.geometry?.type)),
  )
