import { useRef } from 'preact/hooks'
import { drawProfile, type ProfileDrawing, stretchWords } from '../../figure/profile-drawing'
import { ProfileShapes } from '../../figure/profile-shapes'
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
