// @vitest-environment page
import { expect, test } from 'vitest'
import { legStrokes } from '../../../src/map/layers/leg-strokes'

const BOX = { min: { x: 0, y: 0 }, max: { x: 100, y: 100 } }
const ticksOf = (ticks: string) => ticks.split('M').slice(1)

test('a leg outside the box is not drawn', () => {
  expect(legStrokes({ x: 200, y: 0 }, { x: 300, y: 50 }, 'overhead', BOX)).toEqual({ wire: '', ticks: '' })
})

test('only the part of a long leg that lies in the box is drawn', () => {
  const { wire } = legStrokes({ x: -10_000, y: 50 }, { x: 10_000, y: 50 }, 'surface', BOX)
  expect(wire).toBe('M0.0 50.0L100.0 50.0')
})

test('only overhead wire bears ticks, and across it', () => {
  const from = { x: 0, y: 50 }
  const to = { x: 100, y: 50 }
  for (const lay of ['surface', 'buried', 'water'] as const)
    expect(legStrokes(from, to, lay, BOX).ticks).toBe('')
  for (const tick of ticksOf(legStrokes(from, to, 'overhead', BOX).ticks)) {
    const [from1, to1] = tick.split('L').map((point) => point.split(' ')[0])
    expect(from1).toBe(to1)
  }
})

test('the ticks that are seen of a long leg stand where those of the whole leg stand', () => {
  const wide = { min: { x: -1000, y: 0 }, max: { x: 1000, y: 100 } }
  const from = { x: -700, y: 50 }
  const to = { x: 900, y: 50 }
  const all = ticksOf(legStrokes(from, to, 'overhead', wide).ticks)
  const seen = ticksOf(legStrokes(from, to, 'overhead', BOX).ticks)
  expect(seen.length).toBeGreaterThan(1)
  expect(all).toEqual(expect.arrayContaining(seen))
})
