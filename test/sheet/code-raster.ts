import type { Picture } from '../../src/figure/code-picture'

/** The path drawn in black on white at so many dots a module: a raster of its own, for a reader of its own. */
export function rasterOf({ side, path }: Picture, dots: number): ImageData {
  const size = side * dots
  const data = new Uint8ClampedArray(size * size * 4).fill(255)
  for (const [, x, y, run] of path.matchAll(/M(\d+) (\d+)h(\d+)v1/g)) {
    for (let row = Number(y) * dots; row < (Number(y) + 1) * dots; row++)
      for (let column = Number(x) * dots; column < (Number(x) + Number(run)) * dots; column++)
        data.fill(0, (row * size + column) * 4, (row * size + column) * 4 + 3)
  }
  return { data, width: size, height: size, colorSpace: 'srgb' } as ImageData
}
