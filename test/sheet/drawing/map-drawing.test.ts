import { describe, expect, test } from 'vitest'
import { boxAround, overlap, within } from '../../../src/figure/geometry'
import { planeAbout } from '../../../src/geo/plane'
import { verticesOf } from '../../../src/plan/plan'
import { drawMap, type MapDrawing } from '../../../src/sheet/drawing/map-drawing'
import { frameIn } from '../../../src/sheet/drawing/map-frame'
import { windowOver } from '../../../src/sheet/drawing/map-window'
import { demoPlan, sourceOf } from '../demo-source'

const source = sourceOf(demoPlan())
const { plan } = source

function expectClear({ window, labels, stations, splices }: MapDrawing) {
  const symbols = [
    ...stations.map(({ at }) => boxAround(at, 5.2, 3.6)),
    ...splices.map((at) => boxAround(at, 3, 3)),
  ]
  for (const [i, { label, box }] of labels.entries()) {
    expect(within(box, window.frame), label.text).toBe(true)
    for (const other of labels.slice(i + 1)) {
      expect(overlap(box, other.box), `${label.text} over ${other.label.text}`).toBe(false)
    }
    expect(
      symbols.some((symbol) => overlap(box, symbol)),
      `${label.text} over a symbol`,
    ).toBe(false)
  }
}

describe('the map of the demo', () => {
  const positions = [...plan.stations.values()].map(({ position }) => position)
  const drawing = drawMap(source, windowOver(planeAbout(positions), positions, frameIn(186, 150)))

  test('names every station and every line, no label over another or over a symbol', () => {
    expectClear(drawing)
    expect(drawing.unplaced).toEqual([])
    const texts = drawing.labels.map(({ label }) => label.text)
    for (const station of plan.stations.values()) expect(texts).toContain(station.name)
    expect(texts.filter((text) => /^\d+ · .*\d k?m/.test(text))).toHaveLength(plan.lines.size)
  })

  test('has a grid in round metres of UTM, each line named', () => {
    expect(drawing.grid.name).toContain('UTM zone 42 north')
    expect(drawing.grid.lines.length).toBeGreaterThan(3)
    for (const { label } of drawing.grid.lines) expect(label).toMatch(/^[\d\u00a0]+000 [EN]$/)
  })
})

describe('the strip map', () => {
  test.each([...plan.lines.values()].map((line) => [line.id, line] as const))(
    'of %s names its stations, legs, splices and tags, none over another',
    (_, line) => {
      const way = verticesOf(plan, line)
      const window = windowOver(planeAbout(way), way, frameIn(186, 100))
      const drawing = drawMap(source, window, { subject: line.id })
      expectClear(drawing)
      expect(drawing.unplaced).toEqual([])
      const texts = drawing.labels.map(({ label }) => label.text)
      for (const end of [line.from, line.to]) expect(texts).toContain(plan.stations.get(end)!.name)
      for (const i of line.legs.keys())
        expect(texts.some((text) => text.startsWith(`${i + 1} · `))).toBe(true)
      for (const i of drawing.splices.keys()) expect(texts).toContain(`S${i + 1}`)
    },
  )
})
