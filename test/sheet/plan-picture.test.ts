import { readFileSync } from 'node:fs'
import { beforeAll, describe, expect, test } from 'vitest'
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader'
import { type Picture, pictureOf } from '../../src/figure/code-picture'
import { pictureText } from '../../src/sheet/plan-picture'
import { PICTURE_MM } from '../../src/sheet/scene/scene'

beforeAll(async () => {
  await prepareZXingModule({
    overrides: {
      wasmBinary: new Uint8Array(readFileSync('node_modules/zxing-wasm/dist/reader/zxing_reader.wasm'))
        .buffer,
    },
    fireImmediately: true,
  })
})

/** The path drawn in black on white at so many dots a module: a raster of its own, for a reader of its own. */
function rasterOf({ side, path }: Picture, dots: number): ImageData {
  const size = side * dots
  const data = new Uint8ClampedArray(size * size * 4).fill(255)
  for (const [, x, y, run] of path.matchAll(/M(\d+) (\d+)h(\d+)v1/g)) {
    for (let row = Number(y) * dots; row < (Number(y) + 1) * dots; row++)
      for (let column = Number(x) * dots; column < (Number(x) + Number(run)) * dots; column++)
        data.fill(0, (row * size + column) * 4, (row * size + column) * 4 + 3)
  }
  return { data, width: size, height: size, colorSpace: 'srgb' } as ImageData
}

const TITLES = [
  'Two',
  'Ravel Moor survey camp',
  'محطة الهاتف الميداني على التل الشمالي بجانب الطريق القديم قرب الجسر',
  'W'.repeat(80),
  '野外電話站在北方山丘上靠近舊石橋與小河旁邊的長名字用來測試紙張',
]

describe.each(TITLES)('the picture of %s', (title) => {
  const words = { title, revision: 'مراجعة ٣ ب ج د', fingerprint: 'zojo-lomi' }
  const text = pictureText(words)
  const picture = pictureOf(text, 5)

  test('is read by another program as it was written', async () => {
    const [found] = await readBarcodes(rasterOf(picture, 6), { formats: ['QRCode'] })
    expect(found?.text).toBe(text)
  })

  test('has revision and fingerprint whole, and no module less than 0.33 mm', () => {
    expect(text).toContain(`revision ${words.revision}\nplan zojo-lomi`)
    expect(PICTURE_MM / picture.side).toBeGreaterThanOrEqual(0.33)
  })
})

test('a title that finds room stands whole', () => {
  expect(pictureText({ title: 'Ravel Moor survey camp', revision: '3', fingerprint: 'zojo-lomi' })).toBe(
    'Fieldpair\nRavel Moor survey camp\nrevision 3\nplan zojo-lomi',
  )
})
