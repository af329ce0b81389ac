import { readFileSync } from 'node:fs'
import { beforeAll, describe, expect, test } from 'vitest'
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader'
import { pictureOf } from '../../src/figure/code-picture'
import { pictureText } from '../../src/sheet/plan-picture'
import { PICTURE_MM } from '../../src/sheet/scene/scene'
import { rasterOf } from './code-raster'

beforeAll(async () => {
  await prepareZXingModule({
    overrides: {
      wasmBinary: new Uint8Array(readFileSync('node_modules/zxing-wasm/dist/reader/zxing_reader.wasm'))
        .buffer,
    },
    fireImmediately: true,
  })
})

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
