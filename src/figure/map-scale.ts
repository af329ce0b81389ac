/** Leading figures of a map scale, and of a grid's step, that people reckon with. */
const ROUND = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8]
const STEP = [1, 2, 5]

/** The smallest of the round numbers, times a power of ten, that is at least `value`. */
function roundUp(value: number, leading: readonly number[]): number {
  const power = 10 ** Math.floor(Math.log10(value))
  return (leading.find((figure) => figure * power >= value * (1 - 1e-12)) ?? 10) * power
}

/**
 * N of the largest round scale 1 : N at which a stretch of ground fits into a drawing; 1 : 1000 for ground of no extent.
 *
 * @param extentM width and height of the ground, m
 * @param roomMm width and height of the drawing, mm
 */
export function fittingScale(extentM: readonly [number, number], roomMm: readonly [number, number]): number {
  const least = Math.max((extentM[0] * 1000) / roomMm[0], (extentM[1] * 1000) / roomMm[1], 1000)
  return roundUp(least, ROUND)
}

/** `1 : 12 500`, with a narrow space that does not break. */
export const formatScale = (scale: number): string =>
  `1 : ${String(Math.round(scale)).replace(/\B(?=(\d{3})+$)/g, '\u00a0')}`

/** Step of a grid in round figures, whose lines stand about `wantedMm` apart. */
export const gridStep = (wantedMm: number, scale: number, unitM: number): number =>
  roundUp((wantedMm * scale) / 1000 / unitM, STEP)
