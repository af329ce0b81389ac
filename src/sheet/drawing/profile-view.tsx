import type { FlatProfile } from '../../figure/profile-drawing'
import { ProfileShapes } from '../../figure/profile-shapes'
import type { LineProfile } from '../../report/line-profile'
import './profile.css'

/** A line's profile in black on white, 1 unit to the millimetre. */
export function ProfileView({ drawing, profile }: { drawing: FlatProfile; profile: LineProfile }) {
  const { width, height, letter } = drawing
  const [from, to] = profile.ends
  return (
    <svg
      class="profile-sheet"
      viewBox={`0 0 ${width} ${height}`}
      style={{ width: `${width}mm`, height: `${height}mm`, fontSize: `${letter}px` }}
      role="img"
      aria-label={`Profile from ${from} to ${to}`}
    >
      <ProfileShapes drawing={drawing} ends={profile.ends} />
    </svg>
  )
}
