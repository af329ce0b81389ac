import { CLEARANCES, type Clearance } from './clearances'

/** What a crossing is judged by, besides its clearances. The local code and the owner's permit govern. */
export const CROSSING_PRACTICE = {
  /** A run beside a power line counts within this distance and from this length on, m. Common practice: noise and induction grow with both. */
  powerBesideM: 100,
  powerAlongM: 300,
  /** Nearer than this to a power line a whipping wire or a falling pole reaches it, m. Common practice. */
  powerReachM: 15,
  /** A crossing flatter than this is not square, degrees. Common practice. */
  squareDeg: 60,
  /** Shorter stretches of ridge are left alone, m. Common practice. */
  ridgeM: 100,
  /** Each wire of a pair that hangs over rails must bear this, N: 170 lb, and its span may not be longer, m: 150 ft. California GO 95, rule 113.4. */
  railBreakN: 756,
  railSpanM: 45.7,
  /** Wire under a road: how deep, m (from memory of FM 24-20), and how far past each edge, m (SS0440, p. 1-27, and SS0444, p. 2-2). */
  roadDepthM: { fromM: 0.15, toM: 0.3 },
  roadEdgeM: 1,
  /** Wire under a track: how deep, m. Popular Science Monthly 90 (1917), p. 820. */
  trackDepthM: 0.1,
  /** Wire under rails: how far outside them it is staked, m. SS0444, p. 2-4. */
  railStakeM: { fromM: 0.3, toM: 0.6 },
} as const

const clearance = (id: string): Clearance => {
  const found = CLEARANCES.find((entry) => entry.id === id)
  if (!found) throw new Error(`no clearance ${id}`)
  return found
}
const greatest = (...ids: readonly string[]): Clearance =>
  ids.map(clearance).reduce((a, b) => (b.metres > a.metres ? b : a))

/** The height that overhead wire must keep over what it crosses: where two rules differ, the greater. */
export const HEIGHT_OVER = {
  mainRoad: greatest('primary-road', 'road-civil'),
  sideRoad: greatest('secondary-road', 'road-civil'),
  rails: greatest('railway-civil', 'railway-go-95'),
  /** Open ground of which nothing is known: machines may cross it. */
  ground: greatest('field-civil'),
  footway: greatest('footpath-civil', 'footpath-go-95'),
  water: greatest('water-civil'),
} as const

export const POWER_APPROACH: Clearance = clearance('power-approach')
