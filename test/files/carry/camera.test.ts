import { readFileSync } from 'node:fs'
import { encode } from 'uqr'
import { beforeAll, expect, test } from 'vitest'
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader'
import { seeded } from '../../../src/budget/seeded'
import { CodeCollector, codeRun } from '../../../src/files/carry/code-run'
import { packPlan, unpackPlan } from '../../../src/files/carry/pack-plan'
import { formatPlan } from '../../../src/files/format-plan'
import { demoPlan } from '../../sheet/demo-source'
import { photograph } from './photograph'

const SIDE = 640

beforeAll(async () => {
  const wasm = readFileSync('node_modules/zxing-wasm/dist/reader/zxing_reader.wasm')
  await prepareZXingModule({
    overrides: { wasmBinary: new Uint8Array(wasm).buffer },
    fireImmediately: true,
  })
})

/** A code on a screen as such a camera sees it. */
function photographOf(text: string, next: () => number): ImageData {
  const { data: modules, size } = encode(text, { ecc: 'L', boostEcc: true, border: 4 })
  const isDark = (a: number, b: number) => modules[Math.floor(b * size)]?.[Math.floor(a * size)] ?? false
  const grey = photograph(isDark, SIDE, next)
  const data = new Uint8ClampedArray(SIDE * SIDE * 4)
  for (const [k, light] of grey.entries()) data.set([light, light, light, 255], k * 4)
  return { data, width: SIDE, height: SIDE, colorSpace: 'srgb' }
}

test('a plan comes over by a camera that is tilted, blurred and noisy, and misses codes', async () => {
  const plan = demoPlan()
  const run = codeRun(packPlan(plan))
  const next = seeded(4)
  const collector = new CodeCollector()
  let bytes: Uint8Array | undefined
  let seen = 0
  for (let number = 0; !bytes && number < 4 * run.blocks + 20; number++) {
    if (next() < 0.3) continue
    seen++
    const [code] = await readBarcodes(photographOf(run.text(number), next), { formats: ['QRCode'] })
    if (code?.isValid) bytes = collector.take(code.text)?.bytes
  }
  const back = bytes && unpackPlan(bytes)
  expect(back?.ok && formatPlan(back.value)).toBe(formatPlan(plan))
  // Of the pictures that were taken at least two in three were read.
  expect(run.blocks / seen).toBeGreaterThan(2 / 3)
})
