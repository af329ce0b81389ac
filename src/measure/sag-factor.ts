/**
 * Length of a wire hanging as a parabola over its chord, a plain ratio of 1 or more.
 *
 * ½ (√(1 + 16 s²) + asinh(4 s) / (4 s)), s = sag / span; for small s it is 1 + 8/3 s².
 *
 * Source: rectification of the parabola, any calculus textbook. Range: a level span; against the catenary it is within
 * 0.01 % up to 5 % of sag.
 *
 * @param sagPct mid-span sag as a percentage of the span
 */
export function sagFactor(sagPct: number): number {
  const x = (4 * sagPct) / 100
  if (x === 0) return 1
  return (Math.sqrt(1 + x * x) + Math.asinh(x) / x) / 2
}
