import { PLACE_FILES, type PlaceEnding } from '../../files/places/place-files'
import type { Store } from '../../state/store'
import { exportPlaces } from '../../storage/places-files'
import { OnDemand } from '../question'

/** Stations and lines for programs that know no plans. */
export function SaveForOthers({ store }: { store: Store }) {
  return (
    <OnDemand title="Save for other programs">
      <p class="soft">
        Stations go as points and lines as tracks. Wire, sets, circuits and what is in the way have no place
        in such files: keep the plan as well.
      </p>
      <div class="acts">
        {(Object.keys(PLACE_FILES) as PlaceEnding[]).map((ending) => (
          <button key={ending} type="button" onClick={() => void exportPlaces(store.settled.peek(), ending)}>
            {PLACE_FILES[ending].name}
          </button>
        ))}
      </div>
    </OnDemand>
  )
}
