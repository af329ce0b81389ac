import type { Known } from './evidence'
import type { Bench, Manner } from './observation'

/** What is not known about how the evidence was taken, and how often it is so. Allowances. */
export interface Way extends Manner {
  readonly chance: number
}

/** Ways of taking the evidence that could make a difference. */
export function waysOf({ model }: Bench, evidence: readonly Known[]): readonly Way[] {
  const readings = evidence.filter((each) => 'what' in each)
  const isUnsaid = readings.some((each) => each.weather === undefined && each.what !== 'loopOhms')
  const hasBranches = model.lines.length > 1 && readings.some(({ far }) => far !== 'set')
  const hasOtherSets = model.sets.length > 2 && readings.some(({ far }) => far !== 'set')
  const of = (chance: number, manner: Partial<Manner>): Way => ({
    branches: true,
    otherSets: false,
    otherWeather: false,
    ...manner,
    chance,
  })
  const ways = [
    of(0.75, {}),
    ...(hasBranches ? [of(0.15, { branches: false })] : []),
    ...(hasOtherSets ? [of(0.1, { otherSets: true })] : []),
  ]
  return isUnsaid
    ? ways.flatMap((way) => [way, { ...way, otherWeather: true, chance: way.chance * 0.1 }])
    : ways
}
