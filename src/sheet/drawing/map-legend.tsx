import { Fragment } from 'preact'
import type { Box, Point } from '../../figure/geometry'
import { DONE_SIGNS, LAY_SIGNS, SIGN_WORDS } from '../../figure/legend'
import { formatScale } from '../../figure/map-scale'
import { HAZARDS } from '../../hazard/kinds'
import { HAZARD_KINDS } from '../../plan/hazard-schema'
import type { MapDrawing } from './map-drawing'
import { isNarrow, legendColumns } from './map-frame'
import { DoneStroke, HazardPath, MarkSymbol, marksOn, Wire } from './map-symbols'

const TRUNK = ['surface', 'trunk'] as const

type CellAt = (row: number, i: number, count: number, all: number) => Point

const ROW_MM = 4.6

/** Each row of the legend shares its width among its own entries, but none has more than a fourth. */
function inRows(frame: Box): CellAt {
  const left = frame.left + 62
  return (row, i, count) => [
    left + (i * (frame.right - left)) / Math.max(4, count),
    frame.bottom + 4 + row * ROW_MM,
  ]
}

/** All entries one after the other in columns below the scale. */
function inColumns(frame: Box): CellAt {
  const columns = legendColumns(frame)
  return (_row, _i, _count, all) => [
    frame.left + ((all % columns) * (frame.right - frame.left)) / columns,
    frame.bottom + 18 + Math.floor(all / columns) * ROW_MM,
  ]
}

/** Scale bar, stated scale and the legend, in the band below the frame. */
export function MapLegend({ drawing, frame }: { drawing: MapDrawing; frame: Box }) {
  const { bar, grid, window } = drawing
  const barMm = (bar.lengthM * 1000) / window.scale
  const y = frame.bottom + 5
  const kinds = new Set(drawing.hazards.map(({ kind }) => kind))
  const hazards = HAZARD_KINDS.filter((kind) => kinds.has(kind))
  const marks = marksOn(drawing)
  const used = new Set(drawing.legs.map(({ lay }) => lay))
  const trunk = drawing.legs.some(({ isTrunk }) => isTrunk) ? [TRUNK] : []
  const strokes = [...LAY_SIGNS.filter(([lay]) => used.has(lay)), ...trunk]
  const doneOnIt = new Set(drawing.done.map(({ sign }) => sign))
  const done = DONE_SIGNS.filter(([sign]) => doneOnIt.has(sign))
  const inRow = strokes.length + done.length
  const cellAt = isNarrow(frame) ? inColumns(frame) : inRows(frame)
  return (
    <g class="foot-band">
      <path class="bar" d={`M${frame.left} ${y - 1.5}v1.5h${barMm}v-1.5m${-barMm / 2} .5v1`} />
      <text x={frame.left + barMm + 1.5} y={y + 0.6}>
        {bar.text}
      </text>
      <text x={frame.left} y={y + 4.4}>
        {`Scale ${formatScale(window.scale)}, WGS 84, true north up`}
      </text>
      <text class="grid-name" x={frame.left} y={y + 8.4}>
        {grid.name}
      </text>
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
    </g>
  )
}
