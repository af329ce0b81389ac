/** How wire is made safe where it crosses: the same words in a caution and in the crew's directions. */
export const CROSSED = {
  /** SS0440, p. 1-27, and SS0444, p. 2-2; depth from memory of FM 24-20. */
  underRoad: '15 to 30 cm deep and 1 m past each edge',
  /** Popular Science Monthly 90 (1917), p. 820. */
  underTrack: '10 cm deep, tied to something firm at each side',
  /** SS0444, p. 2-4. */
  underRails:
    'close by a sleeper, staked 0.3 to 0.6 m outside them and tied to both, with no slack, tagged at both ends',
  /** FM 24-20, from memory. */
  inWater: 'weighted, anchored on both banks, no splice in it',
  /** Common practice. */
  overWater: 'tied on both banks',
  /** Common practice. */
  underWater: 'anchored on both banks',
} as const
