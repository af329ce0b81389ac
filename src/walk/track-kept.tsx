import { formatCount } from '../words/units'
import type { useKeptTrack } from './keep-track'

type Kept = Pick<ReturnType<typeof useKeptTrack>, 'count' | 'isWanted'>

/** Whether the way that is walked is kept, and how much of it is. */
export const TrackKept = ({ kept: { count, isWanted } }: { kept: Kept }) => (
  <label class="tick">
    <input
      type="checkbox"
      checked={isWanted.value}
      onChange={({ currentTarget }) => {
        isWanted.value = currentTarget.checked
      }}
    />
    Keep the way I walk{count > 0 && `: ${formatCount(count, 'place')}`}
  </label>
)
