/** Light that level ground receives from a sun 45° high, of 255: 1 + 254 · sin 45°. */
const LEVEL = 1 + 254 * Math.SQRT1_2
/** How dark the darkest slope is, and how light the lightest, as opacities. */
const DARKEST = 0.4
const LIGHTEST = 0.25

/**
 * A picture of the shade alone: black where slopes turn from the light, white where they turn to it, clear where the ground
 * is level or not known; so it serves on light paper and on dark. Empty where pictures cannot be made.
 */
export function shadePicture(shade: Uint8Array, columns: number, rows: number): string {
  const canvas = document.createElement('canvas')
  canvas.width = columns
  canvas.height = rows
  const context = canvas.getContext('2d')
  if (!context) return ''
  const image = context.createImageData(columns, rows)
  for (const [i, lit] of shade.entries()) {
    if (lit === 0) continue
    const tone = lit < LEVEL ? 0 : 255
    const opacity = lit < LEVEL ? (1 - lit / LEVEL) * DARKEST : ((lit - LEVEL) / (255 - LEVEL)) * LIGHTEST
    image.data.set([tone, tone, tone, Math.round(255 * opacity)], i * 4)
  }
  context.putImageData(image, 0, 0)
  return canvas.toDataURL()
}
