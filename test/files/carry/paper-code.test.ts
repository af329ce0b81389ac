import { readFileSync } from 'node:fs'
import proj4 from 'proj4'
import { beforeAll, describe, expect, test } from 'vitest'
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader'
import { pictureOf } from '../../../src/figure/code-picture'
import { carriedOfFragment } from '../../../src/files/carry/carried'
import { lineCode, planCode } from '../../../src/files/carry/paper-code'
import { planFingerprint } from '../../../src/files/plan-fingerprint'
import type { Position } from '../../../src/geo/position'
import { crossingsOf } from '../../../src/hazard/crossings'
import { type Plan, verticesOf } from '../../../src/plan/plan'
import { bigPlan } from '../../bench/big-plan'
import { cases } from '../../cases'
import { rasterOf } from '../../sheet/code-raster'
import { demoPlan } from '../../sheet/demo-source'
import { PAPER_PLANS } from '../../sheet/paper-plans'
import { wildNet } from '../../sheet/wild-net'

const PROGRAM = 'https://camp.example/fieldpair/'
/** ISO/IEC 18004, table 7: version 22 at the lowest level, in bytes. */
const MOST_LETTERS = 1003
const wish = (plan: Plan) => ({ fingerprint: planFingerprint(plan), mostLetters: MOST_LETTERS })

beforeAll(async () => {
  const wasm = readFileSync('node_modules/zxing-wasm/dist/reader/zxing_reader.wasm')
  await prepareZXingModule({ overrides: { wasmBinary: new Uint8Array(wasm).buffer }, fireImmediately: true })
})

const carried = (text: string) => {
  const result = carriedOfFragment(new URL(text).hash)
  if (!result?.ok) throw new Error(JSON.stringify(result))
  return result.value
}

describe.each([
  ['the demo', demoPlan()],
  ['twenty-five stations', bigPlan({ stations: 25, perCircuit: 5, bends: 2 })],
])('a line of %s', (_, plan) => {
  test.each([...plan.lines.keys()])(
    '%s comes out of its code as it is drawn, first of its neighbours',
    (id) => {
      const code = lineCode(PROGRAM, plan, id, wish(plan))!
      const { plan: part, partOf } = carried(code.text)
      expect(partOf).toBe(planFingerprint(plan))
      expect([...part.lines.keys()]).toEqual([id, ...code.others])
      const [line, drawn] = [part.lines.get(id)!, plan.lines.get(id)!]
      expect(line.legs).toEqual(drawn.legs)
      expect([line.wire, line.pairs, line.return]).toEqual([drawn.wire, drawn.pairs, drawn.return])
      for (const [i, [lonDeg, latDeg]] of line.bends.entries()) {
        // Rounded to a millionth of a degree, 0.11 m.
        expect(lonDeg).toBeCloseTo(drawn.bends[i]![0], 5)
        expect(latDeg).toBeCloseTo(drawn.bends[i]![1], 5)
      }
      const crossed = (of: Plan) => crossingsOf(of, of.lines.get(id)!)
      expect(crossed(part).map(({ hazard, lay }) => [hazard, lay])).toEqual(
        crossed(plan).map(({ hazard, lay }) => [hazard, lay]),
      )
      for (const [k, { distanceM }] of crossed(part).entries())
        expect(Math.abs(distanceM - crossed(plan)[k]!.distanceM)).toBeLessThan(1)
      for (const circuit of part.circuits.values()) {
        const whole = plan.circuits.get(circuit.id)!
        for (const [station, set] of circuit.sets) expect(whole.sets.get(station)).toBe(set)
      }
    },
  )

  test('is read off its picture by another program', async () => {
    for (const id of [...plan.lines.keys()].slice(0, 4)) {
      const { text } = lineCode(PROGRAM, plan, id, wish(plan))!
      const [found] = await readBarcodes(rasterOf(pictureOf(text, 22), 4), { formats: ['QRCode'] })
      expect(found?.text).toBe(text)
    }
  })
})

test('of any net a line comes out as a plan that reads, or has no code', () => {
  for (let seed = 1; seed <= cases(12); seed++) {
    const plan = wildNet(seed, 2 + (seed % 9))
    for (const id of plan.lines.keys()) {
      const code = lineCode(PROGRAM, plan, id, wish(plan))
      if (code) expect([...carried(code.text).plan.lines.keys()][0]).toBe(id)
    }
  }
})

test('a small net goes whole into a code, a larger one into none', () => {
  const small = PAPER_PLANS.polar!()
  const { plan, partOf } = carried(planCode(PROGRAM, small, MOST_LETTERS)!)
  expect(partOf).toBeUndefined()
  expect(planFingerprint(plan)).toBe(planFingerprint(small))
  expect(planCode(PROGRAM, demoPlan(), MOST_LETTERS)).toBeUndefined()
})

test('a line of too many bends comes with some of them left out, and within what it says', () => {
  const plan = PAPER_PLANS['151 legs']!()
  const [id] = plan.lines.keys()
  const { text, thinnedM } = lineCode(PROGRAM, plan, id!, wish(plan))!
  expect(text.length).toBeLessThanOrEqual(MOST_LETTERS)
  const part = carried(text).plan
  const [thin, whole] = [part, plan].map((of) => verticesOf(of, of.lines.get(id!)!))
  expect(thin!.length).toBeLessThan(whole!.length)
  expect(part.lines.get(id!)!.legs).toHaveLength(thin!.length - 1)
  // In UTM as proj4 has it: straight there is straight on the ground to a few parts in ten thousand.
  const utm = (places: readonly Position[]) =>
    places.map(
      (place) =>
        proj4('EPSG:4326', '+proj=utm +zone=34 +datum=WGS84', [place[0], place[1]]) as [number, number],
    )
  const [thinM, wholeM] = [utm(thin!), utm(whole!)]
  for (const [x, y] of wholeM) {
    const off = thinM.slice(1).map(([bx, by], k) => {
      const [ax, ay] = thinM[k]!
      const part = ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / ((bx - ax) ** 2 + (by - ay) ** 2)
      const t = Math.min(1, Math.max(0, part))
      return Math.hypot(x - ax - t * (bx - ax), y - ay - t * (by - ay))
    })
    expect(Math.min(...off)).toBeLessThan(thinnedM! * 1.01 + 0.5)
  }
})

test('a program that nobody else reaches gives a code that only it reads itself', () => {
  const { text } = lineCode('', demoPlan(), 'camp-gate' as never, wish(demoPlan()))!
  expect(text).toMatch(/^#code=/)
  expect(carriedOfFragment(text)?.ok).toBe(true)
})

test('a code that is not whole is refused in a sentence', () => {
  const { text } = lineCode(PROGRAM, demoPlan(), 'camp-gate' as never, wish(demoPlan()))!
  const { hash } = new URL(text)
  for (const cut of [hash.slice(0, 60), hash.slice(0, 400), '#code=', '#code=%%']) {
    const result = carriedOfFragment(cut)
    expect(result && !result.ok && result.problems[0]!.message).toMatch(/not come whole/)
  }
})

test('a code that hangs printed somewhere since 2026-11-26 still opens', () => {
  const text = readFileSync('test/files/carry/printed-code.txt', 'utf8').trim()
  const { plan } = carried(text)
  expect([...plan.lines.keys()]).toEqual(['camp-gate', 'camp-sheepfold', 'camp-ford'])
  expect(plan.stations.get('gate' as never)!.position).toEqual([67.011074, 48.604258])
})
