import { useRef } from 'preact/hooks'
import { drawProfile, type ProfileDrawing, stretchWords } from '../../figure/profile-drawing'
import type { LineId } from '../../plan/id'
import { type LineProfile, profileAt } from '../../report/line-profile'
import type { Store } from '../../state/store'
import { LAY_WORDS } from '../../words/plan-words'
import { formatLengthM, formatRunM, type UnitSystem } from '../../words/units'
import './profile.css'

const SIZE = { width: 356, height: 190, letter: 11 }
/** How far a key moves the place that is pointed at, as parts of the line. */
const STEPS: Readonly<Record<string, number>> = {
  ArrowLeft: -0.01,
  ArrowRight: 0.01,
  ArrowDown: -0.01,
  ArrowUp: 0.01,
  PageDown: -0.1,
  PageUp: 0.1,
  Home: -1,
  End: 1,
}

interface Props {
  readonly store: Store
  readonly line: LineId
  readonly profile: LineProfile
}

/** The ground under a line and the wire over it. What is pointed at here shows on the map, and the other way round. */
export function ProfileView({ store, line, profile }: Props) {
  const system = store.units.value
  const cursor = store.cursor.value
  const atM = cursor?.line === line ? Math.min(cursor.mapM, profile.lengthM) : null
  const drawing = drawProfile(profile, SIZE, system)
  const box = useRef<HTMLDivElement>(null)
  const point = (mapM: number) => {
    store.cursor.value = { line, mapM: Math.min(profile.lengthM, Math.max(0, mapM)) }
  }
  const follow = (event: PointerEvent) => {
    const frame = box.current?.getBoundingClientRect()
    if (frame?.width) point(drawing.atMOf(((event.clientX - frame.left) / frame.width) * SIZE.width))
  }
  const onKey = (event: KeyboardEvent) => {
    const part = STEPS[event.key]
    if (part === undefined) return
    event.preventDefault()
    point((atM ?? 0) + part * profile.lengthM)
  }
  return (
    <figure class="profile">
      <div
        ref={box}
        class="drawing"
        role="slider"
        tabIndex={0}
        aria-label="Place on the line"
        aria-valuemin={0}
        aria-valuemax={Math.round(profile.lengthM)}
        aria-valuenow={Math.round(atM ?? 0)}
        aria-valuetext={placeWords(profile, atM ?? 0, system)}
        onPointerMove={follow}
        onPointerDown={follow}
        onPointerLeave={(event) => {
          // A finger that lifts has chosen its place; a mouse that leaves has let go.
          if (event.pointerType === 'mouse') store.cursor.value = null
        }}
        onKeyDown={onKey}
      >
        <svg viewBox={`0 0 ${SIZE.width} ${SIZE.height}`} aria-hidden="true">
          <ProfileShapes drawing={drawing} ends={profile.ends} />
          {atM !== null && <Pointed drawing={drawing} profile={profile} atM={atM} />}
        </svg>
      </div>
      <figcaption class="soft">
        {atM === null ? `${stretchWords(drawing)}.` : placeWords(profile, atM, system)}
      </figcaption>
    </figure>
  )
}

function ProfileShapes({ drawing, ends }: { drawing: ProfileDrawing; ends: LineProfile['ends'] }) {
  const { left, right, bottom, height, xTicks, yTicks, crossings } = drawing
  const { letter } = SIZE
  const last = xTicks.length - 1
  return (
    <g>
      {yTicks.map(({ y, text }) => (
        <g key={text}>
          <path class="level" d={`M${left} ${y}H${right}`} />
          <text x={left - 4} y={y + letter / 3} text-anchor="end">
            {text}
          </text>
        </g>
      ))}
      <path class="body" d={drawing.body} />
      <path class="steep" d={drawing.steep} />
      <path class="ground" d={drawing.ground} />
      {drawing.wires.map(({ lay, path }, i) => (
        <path key={i} class={`laid laid-${lay}`} d={path} />
      ))}
      <path class="supports" d={drawing.supports} />
      <path class="hung" d={drawing.hung} />
      {drawing.bends.map(({ x, y }, i) => (
        <circle key={i} class="bend" cx={x} cy={y} r={2.5} />
      ))}
      {crossings.map(({ x, y, text }, i) => (
        <g key={i}>
          <path class="crossing" d={`M${x} ${letter + 4}V${y}`} />
          <text class="named" x={x} y={letter} text-anchor="middle">
            {text}
          </text>
        </g>
      ))}
      <path class="axis" d={`M${left} ${bottom}H${right}`} />
      {xTicks.map(({ x, text }, i) => (
        // The unit stands behind the last number, which keeps its place.
        <text key={text} x={x - (text.length * letter) / 4} y={bottom + letter + 2}>
          {i === last ? `${text} ${drawing.xUnit}` : text}
        </text>
      ))}
      <text x={left - 4} y={letter} text-anchor="end">
        {drawing.yUnit}
      </text>
      <text class="end" x={left + 3} y={height - letter * 2.4}>
        {ends[0]}
      </text>
      <text class="end" x={right - 3} y={height - letter * 2.4} text-anchor="end">
        {ends[1]}
      </text>
    </g>
  )
}

function Pointed({ drawing, profile, atM }: { drawing: ProfileDrawing; profile: LineProfile; atM: number }) {
  const x = drawing.xOf(atM)
  const { heightM } = profileAt(profile, atM)
  return (
    <g class="pointed">
      <path d={`M${x} ${SIZE.letter + 4}V${drawing.bottom}`} />
      {heightM !== undefined && <circle cx={x} cy={drawing.yOf(heightM)} r={4} />}
    </g>
  )
}

function placeWords(profile: LineProfile, atM: number, system: UnitSystem): string {
  const { heightM, leg, lay, wireOverM } = profileAt(profile, atM)
  const height = heightM === undefined ? 'height not known' : `${formatLengthM(heightM, system)} high`
  const over = wireOverM === undefined ? '' : ` ${formatLengthM(wireOverM, system)} over the ground`
  return `${formatRunM(atM, system)} out, ${height}; leg ${leg + 1}, ${LAY_WORDS[lay]}${over}`
}
