/**
 * What a hand-held camera makes of a picture that fills the square from 0 to 1: tilted in two ways, turned, out of focus, noisy, unevenly lit.
 * Light of each dot, 0 to 255, row by row.
 */
export function photograph(
  isDark: (across: number, down: number) => boolean,
  side: number,
  next: () => number,
): Uint8ClampedArray {
  const swing = (most: number) => (next() * 2 - 1) * most
  const [tiltX, tiltY, turn, scale] = [swing(0.12), swing(0.12), swing(0.15), 0.85 + swing(0.1)]
  const grey = new Float32Array(side * side)
  for (let y = 0; y < side; y++)
    for (let x = 0; x < side; x++) {
      const [u, v] = [(x / side - 0.5) / scale, (y / side - 0.5) / scale]
      const depth = 1 + tiltX * u + tiltY * v
      const [a, b] = [
        (u * Math.cos(turn) - v * Math.sin(turn)) / depth,
        (u * Math.sin(turn) + v * Math.cos(turn)) / depth,
      ]
      grey[y * side + x] = (isDark(a + 0.5, b + 0.5) ? 60 : 190) + 30 * u
    }
  const light = new Uint8ClampedArray(side * side)
  const at = (x: number, y: number) =>
    grey[Math.min(side - 1, Math.max(0, y)) * side + Math.min(side - 1, Math.max(0, x))]!
  for (let y = 0; y < side; y++)
    for (let x = 0; x < side; x++) {
      let sum = 0
      for (let dy = -1; dy <= 1; dy++) for (let dx = -1; dx <= 1; dx++) sum += at(x + dx, y + dy)
      light[y * side + x] = sum / 9 + swing(25)
    }
  return light
}
