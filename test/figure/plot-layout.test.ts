import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { layOutPlot, type Plot, type PlotCurve } from '../../src/figure/plot-layout'

const SIZE = { width: 360, height: 220 }
const plot = (curves: readonly PlotCurve[], more: Partial<Plot> = {}): Plot => ({
  ...{ title: '', says: '', x: { label: 'km' }, y: { label: 'V' }, places: [] },
  curves,
  ...more,
})
const straight = (most: number): PlotCurve => ({
  name: 'a',
  points: [
    { x: 0, y: 0 },
    { x: most, y: most },
  ],
})
const numbersOf = (path: string) => path.match(/-?[\d.]+/g)!.map(Number)

describe('a linear axis', () => {
  test('bears round numbers, with the digits that their step needs', () => {
    const texts = (most: number) => layOutPlot(plot([straight(most)]), SIZE).yTicks.map(({ text }) => text)
    expect(texts(80)).toEqual(['0', '20', '40', '60', '80'])
    expect(texts(1)).toEqual(['0.0', '0.2', '0.4', '0.6', '0.8', '1.0'])
  })
  test('begins below nothing where a figure does, with a true minus', () => {
    const { yTicks } = layOutPlot(
      plot([
        {
          name: 'a',
          points: [
            { x: 0, y: -4 },
            { x: 1, y: 6 },
          ],
        },
      ]),
      SIZE,
    )
    expect(yTicks[0]!.text).toMatch(/^−\d/)
  })
  test('has room for the level', () => {
    const { level, top } = layOutPlot(plot([straight(5)], { level: { name: 'most', y: 30 } }), SIZE)
    expect(level).toMatchObject({ text: 'most' })
    expect(level!.at).toBeGreaterThanOrEqual(top)
  })
})

test('on a logarithmic axis equal ratios take equal room', () => {
  const points = [300, 1000, 3400].map((x) => ({ x, y: 1 }))
  const { xTicks, left, right } = layOutPlot(
    plot([{ name: 'a', points }], { x: { label: 'Hz', log: true, ticks: [300, 3400, 1009.95] } }),
    SIZE,
  )
  // 1009.95 is the geometric mean of 300 and 3400.
  expect(xTicks.map(({ at }) => at)).toEqual([left, right, (left + right) / 2])
})

test('the name of a level stands clear of the curves where there is room', () => {
  // The curve falls to just above the level at the right: its name goes to the left, below the curve.
  const falling = {
    name: 'a',
    points: Array.from({ length: 25 }, (_, k) => ({ x: k, y: 20 - k * 0.65 })),
  }
  const { level } = layOutPlot(
    plot([falling], { level: { name: '4 V: the least across the set', y: 4 } }),
    SIZE,
  )
  expect(level!.anchor).toBe('start')
  const flat = { name: 'a', points: [0, 10, 20].map((x) => ({ x, y: 20 })) }
  expect(layOutPlot(plot([flat], { level: { name: 'least', y: 4 } }), SIZE).level!.anchor).toBe('end')
})

test('names of places never run into each other; the first and the last stay', () => {
  const places = Array.from({ length: 12 }, (_, k) => ({ name: `Station ${k}`, x: k / 11 }))
  const named = layOutPlot(plot([straight(1)], { places }), SIZE).places
  expect(named[0]!.text).toBe('Station 0')
  expect(named.at(-1)!.text).toBe('Station 11')
  expect(named.filter(({ text }) => text === '').length).toBeGreaterThan(6)
})

test('no curve leaves the frame, and none is other than a number', () => {
  const figure = fc.double({ min: -1e6, max: 1e6, noNaN: true })
  const curve = fc.array(fc.record({ x: fc.double({ min: 0, max: 1e4, noNaN: true }), y: figure }), {
    minLength: 1,
  })
  fc.assert(
    fc.property(fc.array(curve, { minLength: 1, maxLength: 3 }), (curves) => {
      const layout = layOutPlot(plot(curves.map((points) => ({ name: 'a', points }))), SIZE)
      for (const { path } of layout.curves) {
        const numbers = numbersOf(path)
        for (let k = 0; k < numbers.length; k += 2) {
          expect(numbers[k]).toBeGreaterThanOrEqual(layout.left - 0.1)
          expect(numbers[k]).toBeLessThanOrEqual(layout.right + 0.1)
          expect(numbers[k + 1]).toBeGreaterThanOrEqual(layout.top - 0.1)
          expect(numbers[k + 1]).toBeLessThanOrEqual(layout.bottom + 0.1)
        }
      }
    }),
  )
})
