import type { Box } from '../../figure/geometry'
import './contours.css'
import './far.css'
import { formatScale } from '../../figure/map-scale'
import { textWidthEm } from '../../figure/text-width'
import { GroundPicture } from '../beneath'
import type { Norths } from '../paper-source'
import type { MapDrawing } from './map-drawing'
import { isNarrowest } from './map-frame'
import { MapLegend } from './map-legend'
import { DoneStroke, HazardPath, LineSigns, pathOf, StationSymbol, Wire } from './map-symbols'
import { NorthDiagram } from './north-diagram'

/** Letters of the grid's labels, mm an em; drawing.css holds the same figure. */
const GRID_LETTER_MM = 2.8

/** Names of the grid's lines in the bands above the frame and to the left of it, none running out of the drawing. */
function GridLabels({ drawing, frame, widthMm }: { drawing: MapDrawing; frame: Box; widthMm: number }) {
  return (
    <g class="grid-label">
      {drawing.grid.lines.map(({ points, label, edge }) => {
        const [x, y] = points[0]
        const half = (textWidthEm(label) * GRID_LETTER_MM) / 2
        if (edge === 'top') {
          if (y > frame.top + 0.1) return null
          return (
            <text
              key={label}
              x={Math.min(widthMm - half, Math.max(half, x))}
              y={frame.top - 1}
              text-anchor="middle"
            >
              {label}
            </text>
          )
        }
        if (x > frame.left + 0.1) return null
        const middle = Math.max(frame.top + half, Math.min(frame.bottom - half, y))
        return (
          <text
            key={label}
            transform={`translate(${frame.left - 1} ${middle}) rotate(-90)`}
            text-anchor="middle"
          >
            {label}
          </text>
        )
      })}
    </g>
  )
}

/** The names on a map, each on white, with strokes to those that stand apart from their place. */
function Names({ labels }: { labels: MapDrawing['labels'] }) {
  if (labels.length === 0) return null
  const leaders = labels.map(({ leader }) => (leader ? pathOf(leader) : '')).join('')
  const white = labels.map(({ label: { heightMm }, box: { left, right, bottom } }) => {
    const [top, foot] = [bottom - heightMm * 0.95, bottom - heightMm * 0.1]
    return pathOf(
      [
        [left, top],
        [right, top],
        [right, foot],
        [left, foot],
      ],
      true,
    )
  })
  return (
    <>
      {leaders && <path class="leader" d={leaders} />}
      <path class="halo" d={white.join('')} />
      {labels.map(({ label: { id, text, heightMm }, box: { left, right, bottom }, style }) => (
        <text
          key={id}
          class={`label ${style}`}
          x={((left + right) / 2).toFixed(2)}
          y={(bottom - heightMm * 0.24).toFixed(2)}
          text-anchor="middle"
        >
          {text}
        </text>
      ))}
    </>
  )
}

/** A map drawn from the plan alone, in mm, black on white. `id` keeps its clipping apart from another map's. */
export function MapView({
  drawing,
  norths,
  size: [widthMm, heightMm],
  hasLegend = true,
  id,
}: {
  drawing: MapDrawing
  norths: Norths
  size: readonly [widthMm: number, heightMm: number]
  hasLegend?: boolean
  id: string
}) {
  const { frame } = drawing.window
  const box = {
    x: frame.left,
    y: frame.top,
    width: frame.right - frame.left,
    height: frame.bottom - frame.top,
  }
  return (
    <svg
      class="map-view"
      viewBox={`0 0 ${widthMm} ${heightMm}`}
      role="img"
      aria-label={`Map, scale ${formatScale(drawing.window.scale)}`}
    >
      <defs>
        <clipPath id={`frame-${id}`}>
          <rect {...box} />
        </clipPath>
        <pattern
          id={`hatch-${id}`}
          width="2"
          height="2"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <path class="hatch" d="M0 0V2" />
        </pattern>
      </defs>
      <GroundPicture extent={drawing.extent} box={frame} />
      <g class="grid">
        <path d={drawing.grid.lines.map(({ points }) => pathOf(points)).join('')} />
      </g>
      <g clip-path={`url(#frame-${id})`}>
        <g class="contours">
          {[false, true].map((isIndex) => {
            const d = drawing.contours
              .map((each) => (each.isIndex === isIndex ? pathOf(each.points) : ''))
              .join('')
            return d && <path key={`${isIndex}`} class={isIndex ? 'index' : undefined} d={d} />
          })}
          {drawing.contours.map(
            ({ text, at }, i) =>
              text &&
              at && (
                <text key={i} x={at[0]} y={at[1] + 0.8} text-anchor="middle">
                  {text}
                </text>
              ),
          )}
        </g>
        {drawing.hazards.map(({ kind, rings, closed }, i) => {
          const d = rings.map((ring) => pathOf(ring, closed)).join('')
          return (
            <g key={i}>
              {closed && (
                <path class="area" d={d} style={{ fill: `url(#hatch-${id})` }} fill-rule="evenodd" />
              )}
              <HazardPath kind={kind} d={d} />
            </g>
          )
        })}
        {drawing.done.map((each, i) => (
          <DoneStroke key={i} {...each} where="under" />
        ))}
        {drawing.far.map(({ limit, rings }) => (
          <path
            key={limit}
            class={`far-outline far-${limit}`}
            d={rings.map((ring) => pathOf(ring, true)).join('')}
          />
        ))}
        {drawing.corridor.length > 0 && (
          <path class="corridor-outline" d={drawing.corridor.map((ring) => pathOf(ring, true)).join('')} />
        )}
        {drawing.ways.map((way, k) => (
          <path key={k} class={k === 0 ? 'way-led best' : 'way-led'} d={pathOf(way)} />
        ))}
        {drawing.legs.map((leg, i) =>
          leg.isSubject ? (
            <Wire key={i} {...leg} />
          ) : (
            <path key={i} class="other-wire" d={pathOf(leg.points)} />
          ),
        )}
        {drawing.done.map((each, i) => (
          <DoneStroke key={i} {...each} where="over" />
        ))}
        <LineSigns kind="bend" marks={drawing.bends.map((at) => ({ at }))} />
        <LineSigns kind="tag" marks={drawing.tags} />
        <LineSigns kind="splice" marks={drawing.splices.map((at) => ({ at }))} />
        {drawing.stations.map((station, i) => (
          <StationSymbol key={i} {...station} />
        ))}
        {drawing.matches.length > 0 && (
          <path class="match-line" d={drawing.matches.map(({ points }) => pathOf(points)).join('')} />
        )}
        <Names labels={drawing.labels} />
      </g>
      <rect class="frame" {...box} />
      <GridLabels drawing={drawing} frame={frame} widthMm={widthMm} />
      <MapLegend drawing={drawing} frame={frame} hasLegend={hasLegend} />
      {hasLegend && (
        <NorthDiagram
          norths={norths}
          at={
            isNarrowest(frame) ? [frame.right - 6, frame.bottom + 14.5] : [frame.left + 55, frame.bottom + 13]
          }
        />
      )}
    </svg>
  )
}
