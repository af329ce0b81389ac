/** Seeded numbers from 0 up to 1: mulberry32 (T. Ettinger, 2017, public domain; from memory). The same seed gives the same numbers. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}

/** Seeded standard normal numbers. Source: G. E. P. Box and M. E. Muller, Ann. Math. Statist. 29 (1958), 610 (from memory). */
export function seededNormal(seed: number): () => number {
  const uniform = seeded(seed)
  let spare: number | undefined
  return () => {
    if (spare !== undefined) {
      const value = spare
      spare = undefined
      return value
    }
    const radius = Math.sqrt(-2 * Math.log(1 - uniform()))
    const angle = 2 * Math.PI * uniform()
    spare = radius * Math.sin(angle)
    return radius * Math.cos(angle)
  }
}
