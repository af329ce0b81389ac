import { Fragment } from 'preact'
import type { Box, Point } from '../../figure/geometry'
import { SIGN_WORDS } from '../../figure/legend'
import { formatScale } from '../../figure/map-scale'
import { HAZARDS } from '../../hazard/kinds'
import type { Norths } from '../paper-source'
import {
  LEAST_LEGEND_MM,
  LEGEND_ENTRY_MM,
  LEGEND_ROW_MM,
  type LegendSigns,
  legendEntriesAcross,
  legendHeightMm,
  signsOn,
  TRUNK,
} from './legend-signs'
import type { MapDrawing } from './map-drawing'
import { isNarrow, isNarrowest, legendColumns } from './map-frame'
import { DoneStroke, HazardPath, MarkSymbol, Wire } from './map-symbols'
import { NorthDiagram } from './north-diagram'

type CellAt = (row: number, i: number, count: number, all: number) => Point

/** Each row of the legend shares its width among its own entries, but none has more than a fourth. */
function inRows(frame: Box): CellAt {
  const left = frame.left + 62
  return (row, i, count) => [
    left + (i * (frame.right - left)) / Math.max(4, count),
    frame.bottom + 4 + row * LEGEND_ROW_MM,
  ]
}

/** All entries one after the other in columns below the scale. */
function inColumns(frame: Box): CellAt {
  const columns = legendColumns(frame)
  return (_row, _i, _count, all) => [
    frame.left + ((all % columns) * (frame.right - frame.left)) / columns,
    frame.bottom + (isNarrowest(frame) ? 22 : 18) + Math.floor(all / columns) * LEGEND_ROW_MM,
  ]
}

/** Scale bar and stated scale in the band below the frame, and the legend where the map has its own. */
export function MapLegend({
  drawing,
  frame,
  hasLegend,
}: {
  drawing: MapDrawing
  frame: Box
  hasLegend: boolean
}) {
  const { bar, grid, window } = drawing
  const barMm = (bar.lengthM * 1000) / window.scale
  const y = frame.bottom + (hasLegend ? 5 : 3)
  const scale = `Scale ${formatScale(window.scale)}, WGS 84`
  const told = [...(isNarrowest(frame) ? [scale, 'true north up'] : [`${scale}, true north up`]), grid.name]
  return (
    <g class={isNarrow(frame) ? 'foot-band narrow' : 'foot-band'}>
      <path class="bar" d={`M${frame.left} ${y - 1.5}v1.5h${barMm}v-1.5m${-barMm / 2} .5v1`} />
      <text x={frame.left + barMm + 1.5} y={y + 0.6}>
        {bar.text}
      </text>
      {hasLegend ? (
        told.map((words, i) => (
          <text key={words} x={frame.left} y={y + 4.4 + 4 * i}>
            {words}
          </text>
        ))
      ) : (
        <text x={frame.right} y={y + 0.6} text-anchor="end">
          {`Scale ${formatScale(window.scale)}`}
        </text>
      )}
      {hasLegend && (
        <Signs signs={signsOn([drawing])} cellAt={isNarrow(frame) ? inColumns(frame) : inRows(frame)} />
      )}
    </g>
  )
}

/** The legend that several maps share, by itself, with their norths at its right. */
export function SharedLegend({
  signs,
  norths,
  widthMm,
}: {
  signs: LegendSigns
  norths: Norths
  widthMm: number
}) {
  const across = legendEntriesAcross(widthMm)
  const cellAt: CellAt = (_row, _i, _count, all) => [
    (all % across) * LEGEND_ENTRY_MM,
    2.3 + Math.floor(all / across) * LEGEND_ROW_MM,
  ]
  return (
    <svg
      class="legend-view"
      viewBox={`0 0 ${widthMm} ${legendHeightMm(signs, widthMm).toFixed(2)}`}
      role="img"
      aria-label="Legend of the maps"
    >
      <g class="foot-band">
        <Signs signs={signs} cellAt={cellAt} />
      </g>
      <NorthDiagram norths={norths} at={[widthMm - 6, LEAST_LEGEND_MM - 0.5]} />
    </svg>
  )
}

function Signs({ signs: { marks, strokes, done, hazards }, cellAt }: { signs: LegendSigns; cellAt: CellAt }) {
  const inRow = strokes.length + done.length
  return (
    <>
      {marks.map((kind, i) => {
        const [x, row] = cellAt(0, i, marks.length, i)
        return (
          <Fragment key={kind}>
            <MarkSymbol kind={kind} at={[x + 2.6, row]} />
            <text x={x + 6.4} y={row + 0.9}>
              {SIGN_WORDS[kind].brief}
            </text>
          </Fragment>
        )
      })}
      {strokes.map(([lay, name], i) => {
        const [x, row] = cellAt(1, i, inRow, marks.length + i)
        const points = [
          [x, row],
          [x + 5.5, row],
        ] as const
        const ticks =
          lay === 'overhead'
            ? [1.6, 3.9].map(
                (dx) =>
                  [
                    [x + dx, row - 1.1],
                    [x + dx, row + 1.1],
                  ] as const,
              )
            : []
        return (
          <Fragment key={name}>
            <Wire points={points} lay={lay} ticks={ticks} isTrunk={name === TRUNK[1]} />
            <text x={x + 6.4} y={row + 0.9}>
              {name}
            </text>
          </Fragment>
        )
      })}
      {done.map(([sign, name], i) => {
        const place = strokes.length + i
        const [x, row] = cellAt(1, place, inRow, marks.length + place)
        const points = [
          [x, row],
          [x + 5.5, row],
        ] as const
        // Tested wire lies, too.
        const edges = sign === 'recovered' ? sign : 'laid'
        return (
          <Fragment key={sign}>
            <DoneStroke points={points} sign={edges} where="under" />
            <Wire points={points} lay="surface" ticks={[]} />
            <DoneStroke points={points} sign={sign} where="over" />
            <text x={x + 6.4} y={row + 0.9}>
              {name}
            </text>
          </Fragment>
        )
      })}
      {hazards.map((kind, i) => {
        const [x, row] = cellAt(2, i, hazards.length, marks.length + inRow + i)
        return (
          <Fragment key={kind}>
            <HazardPath kind={kind} d={`M${x} ${row}h5.5`} />
            <text x={x + 6.4} y={row + 0.9}>
              {HAZARDS[kind].legend}
            </text>
          </Fragment>
        )
      })}
    </>
  )
}
