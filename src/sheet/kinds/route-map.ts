import { clipSegment, segmentsOf } from '../../figure/geometry'
import { planeAbout } from '../../geo/plane'
import { verticesOf } from '../../plan/plan'
import { cautionText } from '../../words/caution-words'
import { nameIn, tongueOf } from '../../words/tongue'
import { formatCount, formatMassKg, formatRunM, formatTempC } from '../../words/units'
import { verdictSentence } from '../../words/verdict-words'
import { frameIn } from '../drawing/map-frame'
import { innerBox, isInWindow, matchesOf, tilesOver, toPaper, windowOver } from '../drawing/map-window'
import type { Block } from '../layout/block'
import { heightOfFewestSheets } from '../layout/highest-drawing'
import type { SheetRoom } from '../layout/paper-size'
import { northsAt, northsText, type PaperSource } from '../paper-source'
import { lineTable } from '../tables/line-table'
import { stationTable } from '../tables/station-table'
import { mapBlocks } from './map-block'

/** A net that needs a smaller scale than this is drawn once more, over several maps, at this one. */
const DETAIL_SCALE = 60_000
/** Heights of the map of the whole net, the best first, mm. */
const OVERVIEW_MM = [150, 140, 130, 120, 110, 100]
/** Room for a detail map's heading, and for a line of names below it, mm. */
const TILE_WORDS_MM = 22

function summary({ plan, report, odds, system }: PaperSource): string {
  const say = tongueOf(plan, system)
  const groundM = report.lines.reduce((sum, line) => sum + line.groundM, 0)
  const wireM = report.lines.reduce(
    (sum, line) => sum + line.wireM * (plan.lines.get(line.id)?.pairs ?? 1),
    0,
  )
  const kg = report.spools.reduce((sum, wire) => sum + wire.kg, 0)
  const splices = report.spools.reduce((sum, wire) => sum + wire.splices, 0)
  const circuits = report.circuits.map(
    (circuit) => `${nameIn(plan, circuit.id)} ${verdictSentence(circuit, odds.get(circuit.id), say)}`,
  )
  return (
    `${formatCount(plan.stations.size, 'station')} and ${formatCount(report.lines.length, 'line')} over ${formatRunM(groundM, system)} of ground; ` +
    `${formatRunM(wireM, system)} of wire, ${formatCount(splices, 'splice')}, ${formatMassKg(kg, system)} of wire to carry with reserve. ` +
    `Figures for ${plan.weather} weather, wire at ${formatTempC(plan.wireTempC, system)}. ` +
    (circuits.length > 0 ? circuits.join(' ') : 'No circuit is planned.')
  )
}

/** The line route map of the whole net, what it adds up to, its stations and lines, and what could hurt someone. */
export function routeMap(source: PaperSource, room: SheetRoom): readonly Block[] {
  const { plan, report, date, system } = source
  const say = tongueOf(plan, system)
  const lines = [...plan.lines.values()]
  const positions = [
    ...[...plan.stations.values()].map((station) => station.position),
    ...lines.flatMap((line) => line.bends),
  ]
  const plane = planeAbout(positions)
  const norths = northsAt(plane.middle, date)
  const tables = [stationTable(source), lineTable(source)].filter(({ rows }) => rows.length > 0)
  const below: readonly Block[] = [
    { kind: 'text', text: northsText(norths, date) },
    { kind: 'text', text: summary(source) },
    ...tables.map((table): Block => ({ kind: 'table', table })),
  ]
  const cautions: readonly Block[] =
    report.cautions.length > 0
      ? [
          {
            kind: 'box',
            title: 'Cautions',
            sentences: report.cautions.map((caution) => cautionText(caution, say)),
          },
        ]
      : []
  const wholeOn = (heightMm: number) => windowOver(plane, positions, frameIn(room.widthMm, heightMm))
  const isClear = (heightMm: number) => wholeOn(heightMm).scale <= DETAIL_SCALE
  const heights = OVERVIEW_MM.filter((heightMm) => heightMm <= room.heightMm - 60)
  const size = [
    room.widthMm,
    // A lower map that no longer shows the net clearly would save nothing: it would need maps in detail.
    heightOfFewestSheets(
      heights.some(isClear) ? heights.filter(isClear) : heights,
      [...below, ...cautions],
      room,
    ),
  ] as const
  const whole = wholeOn(size[1])

  const tileSize = [room.widthMm, room.heightMm - TILE_WORDS_MM] as const
  const tiles =
    whole.scale <= DETAIL_SCALE
      ? []
      : tilesOver(plane, positions, frameIn(...tileSize), DETAIL_SCALE, (window) => {
          const inner = innerBox(window.frame)
          const touches = lines.some((line) =>
            segmentsOf(verticesOf(plan, line).map((position) => toPaper(window, position))).some((segment) =>
              clipSegment(segment, inner),
            ),
          )
          return !touches && !positions.some((position) => isInWindow(window, position))
        })
  return [
    ...mapBlocks(source, whole, size, norths, 'whole', { isOverview: tiles.length > 0 }),
    ...below,
    ...cautions,
    ...tiles.flatMap((tile): readonly Block[] => [
      { kind: 'heading', text: `Map ${tile.number} of ${tiles.length}` },
      ...mapBlocks(source, tile.window, tileSize, norths, `tile-${tile.number}`, {
        matches: matchesOf(tile),
      }),
    ]),
  ]
}
