import geodesic from 'geographiclib-geodesic'
import { magvar } from 'magvar'
import proj4 from 'proj4'
import { describe, expect, test } from 'vitest'
import { planeAbout } from '../../src/geo/plane'
import type { Position } from '../../src/geo/position'
import { lineNumber, stationName, verticesOf } from '../../src/plan/plan'
import { drawMap } from '../../src/sheet/drawing/map-drawing'
import { frameIn } from '../../src/sheet/drawing/map-frame'
import { windowOver } from '../../src/sheet/drawing/map-window'
import { blocksWithin } from '../../src/sheet/layout/block'
import { bodyOf, PAPER_SIZES } from '../../src/sheet/layout/paper-size'
import type { Table } from '../../src/sheet/layout/table'
import type { Paper } from '../../src/sheet/paper'
import { PAPER_KINDS } from '../../src/sheet/paper-kinds'
import { todays } from '../cases'
import { sourceOf } from './demo-source'
import { PAPER_PLANS } from './paper-plans'

const WGS84 = geodesic.Geodesic.WGS84
const room = bodyOf(PAPER_SIZES[0]!)
/** The papers of `sourceOf` are of 2026-11-25; noon of it as a year. */
const YEAR = 2026 + 328.5 / 365

const inverse = ([lon1, lat1]: Position, [lon2, lat2]: Position) => WGS84.Inverse(lat1, lon1, lat2, lon2)

/** East and north by proj4 in the zone that a reference names, m. */
function outsideGrid(zone: string, [lonDeg, latDeg]: Position): readonly [number, number] {
  const south = latDeg < 0
  const definition = /^\d/.test(zone)
    ? `+proj=utm +zone=${Number.parseInt(zone, 10)}${south ? ' +south' : ''} +datum=WGS84 +units=m`
    : `+proj=stere +lat_0=${south ? -90 : 90} +lat_ts=${south ? -90 : 90} +lon_0=0 +k=0.994 +x_0=2000000 +y_0=2000000 +datum=WGS84 +units=m`
  return proj4(definition, [lonDeg, latDeg]) as [number, number]
}

const headAt = (table: Table, is: (head: string) => boolean) =>
  table.columns.findIndex(({ head }) => is(head))

/** What a line's card tells of its way; of a card that two share, the rows that are its own. */
const walkOf = (cards: readonly Paper[], number: number): readonly Table[] =>
  cards.flatMap(({ about, blocks }) =>
    blocksWithin(blocks).flatMap((block) => {
      if (block.kind !== 'table' || block.table.title !== 'On the way') return []
      const { table } = block
      const of = headAt(table, (head) => head === 'Line')
      if (of < 0) return about?.startsWith(`Line ${number}:`) ? [table] : []
      return [
        {
          ...table,
          columns: table.columns.toSpliced(of, 1),
          rows: table.rows.filter((row) => row[of] === `${number}`).map((row) => row.toSpliced(of, 1)),
        },
      ]
    }),
  )

describe.each(todays(Object.keys(PAPER_PLANS), 2))('%s', (name) => {
  const plan = PAPER_PLANS[name]!()
  const source = sourceOf(plan)
  const cards = PAPER_KINDS['Line cards'](source, room)
  const walks = [...plan.lines.keys()].map((line) => walkOf(cards, lineNumber(plan, line)))

  test('bearings on the line cards are GeographicLib’s, less what another magnetic model says', () => {
    let read = 0
    for (const [i, line] of [...plan.lines.values()].entries()) {
      const way = verticesOf(plan, line)
      const [lonDeg, latDeg] = planeAbout(way).middle
      const eastDeg = magvar(latDeg, lonDeg, 0, YEAR)
      const does = walks[i]!.flatMap((table) =>
        table.rows.map((row) => row[headAt(table, (head) => head === 'Do')]),
      )
      const printed = does.flatMap((text) =>
        [...String(text).matchAll(/On at (\d+)°/g)].map(([, deg]) => Number(deg)),
      )
      expect(printed).toHaveLength(way.length - 1)
      for (const [k, deg] of printed.entries()) {
        const outside = (inverse(way[k]!, way[k + 1]!).azi1! - eastDeg + 720) % 360
        const off = Math.abs(((deg - outside + 540) % 360) - 180)
        // Half of the last figure that is printed; 0.05° for what two programs make of one model within a day.
        expect(off, `${name}, line ${i + 1}, leg ${k + 1}`).toBeLessThanOrEqual(0.55)
        read++
      }
    }
    expect(read).toBeGreaterThan(0)
  })

  test('grid references on the line cards are proj4’s, to a metre', () => {
    const [first] = plan.lines.values()
    const table = walks[0]![0]!
    const square = /^(\S+)(?: ([A-Z]{2}))? …$/.exec(table.columns[2]!.head)
    const way = verticesOf(plan, first!)
    const at = headAt(table, (head) => head === 'At')
    let read = 0
    for (const row of table.rows) {
      const what = String(row[at])
      const bend = /bend (\d+)/.exec(what)
      const position = bend
        ? way[Number(bend[1])]
        : what.includes(stationName(plan, first!.from))
          ? way[0]
          : what.includes(stationName(plan, first!.to))
            ? way.at(-1)
            : undefined
      if (!position) continue
      const parts = `${square ? `${square.slice(1).filter(Boolean).join(' ')} ` : ''}${row[2]}`.split(
        /[\s\u00a0]+/,
      )
      const [zone, , e, n] = parts
      const [eastM, northM] = outsideGrid(zone!, position)
      for (const [printed, m] of [
        [e, eastM],
        [n, northM],
      ] as const) {
        const off = Math.abs(Number(printed) - (Math.floor(m + 1e-6) % 100_000))
        expect(Math.min(off, 100_000 - off), what).toBeLessThanOrEqual(1)
      }
      read++
    }
    expect(read).toBeGreaterThanOrEqual(2)
  })

  test('distances on the maps are those of the ground at the stated scale, to 0.1 mm in 100', () => {
    for (const line of [...plan.lines.values()].slice(0, 12)) {
      const way = verticesOf(plan, line)
      const window = windowOver(planeAbout(way), way, frameIn(room.widthMm, 120))
      const { legs, bar } = drawMap(source, window, { subject: line.id })
      expect((bar.lengthM * 1000) / window.scale).toBeGreaterThan(10)
      const own = legs.filter(({ isSubject }) => isSubject)
      expect(own).toHaveLength(way.length - 1)
      for (const [k, leg] of own.entries()) {
        const [from, to] = [leg.points[0]!, leg.points.at(-1)!]
        const drawnMm = Math.hypot(to[0] - from[0], to[1] - from[1])
        const groundMm = (inverse(way[k]!, way[k + 1]!).s12! * 1000) / window.scale
        expect(Math.abs(drawnMm - groundMm)).toBeLessThan(0.02 + groundMm / 1000)
      }
    }
  })
})
