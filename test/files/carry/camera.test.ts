import { readFileSync } from 'node:fs'
import { encode } from 'uqr'
import { beforeAll, expect, test } from 'vitest'
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader'
import { seeded } from '../../../src/budget/seeded'
import { CodeCollector, codeRun } from '../../../src/files/carry/code-run'
import { packPlan, unpackPlan } from '../../../src/files/carry/pack-plan'
import { formatPlan } from '../../../src/files/format-plan'
import { demoPlan } from '../../sheet/demo-source'

const SIDE = 640

beforeAll(async () => {
  const wasm = readFileSync('node_modules/zxing-wasm/dist/reader/zxing_reader.wasm')
  await prepareZXingModule({
    overrides: { wasmBinary: new Uint8Array(wasm).buffer },
    fireImmediately: true,
  })
})

/** What a hand-held camera makes of a code on a screen: tilted in two ways, turned, out of focus, noisy, unevenly lit. */
function photograph(text: string, next: () => number): ImageData {
  const { data: modules, size } = encode(text, { ecc: 'L', boostEcc: true, border: 4 })
  const swing = (most: number) => (next() * 2 - 1) * most
  const [tiltX, tiltY, turn, scale] = [swing(0.12), swing(0.12), swing(0.15), 0.85 + swing(0.1)]
  const grey = new Float32Array(SIDE * SIDE)
  for (let y = 0; y < SIDE; y++)
    for (let x = 0; x < SIDE; x++) {
      const [u, v] = [(x / SIDE - 0.5) / scale, (y / SIDE - 0.5) / scale]
      const depth = 1 + tiltX * u + tiltY * v
      const [a, b] = [
        (u * Math.cos(turn) - v * Math.sin(turn)) / depth,
        (u * Math.sin(turn) + v * Math.cos(turn)) / depth,
      ]
      const isDark = modules[Math.floor((b + 0.5) * size)]?.[Math.floor((a + 0.5) * size)]
      grey[y * SIDE + x] = (isDark ? 60 : 190) + 30 * u
    }
  const data = new Uint8ClampedArray(SIDE * SIDE * 4)
  const at = (x: number, y: number) =>
    grey[Math.min(SIDE - 1, Math.max(0, y)) * SIDE + Math.min(SIDE - 1, Math.max(0, x))]!
  for (let y = 0; y < SIDE; y++)
    for (let x = 0; x < SIDE; x++) {
      let sum = 0
      for (let dy = -1; dy <= 1; dy++) for (let dx = -1; dx <= 1; dx++) sum += at(x + dx, y + dy)
      data.fill(sum / 9 + swing(25), (y * SIDE + x) * 4, (y * SIDE + x) * 4 + 3)
      data[(y * SIDE + x) * 4 + 3] = 255
    }
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
    const [code] = await readBarcodes(photograph(run.text(number), next), { formats: ['QRCode'] })
    if (code?.isValid) bytes = collector.take(code.text)?.bytes
  }
  const back = bytes && unpackPlan(bytes)
  expect(back?.ok && formatPlan(back.value)).toBe(formatPlan(plan))
  // Of the pictures that were taken at least two in three were read.
  expect(run.blocks / seen).toBeGreaterThan(2 / 3)
})
