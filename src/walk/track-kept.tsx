import { Tick } from '../panel/tick'
import { formatCount } from '../words/units'
import type { useKeptTrack } from './keep-track'

type Kept = Pick<ReturnType<typeof useKeptTrack>, 'count' | 'isWanted'>

/** Whether the way that is walked is kept, and how much of it is. */
export const TrackKept = ({ kept: { count, isWanted } }: { kept: Kept }) => (
  <Tick
    checked={isWanted.value}
    onChange={(isTicked) => {
      isWanted.value = isTicked
    }}
  >
    Keep the way I walk{count > 0 && `: ${formatCount(count, 'place')}`}
  </Tick>
)
