import type { Store } from '../../state/store'
import { ELEVATION_TYPES } from '../../storage/open-dropped'
import { chooseFiles } from '../../storage/open-save'

/** The way to elevations from a file. */
export function OpenElevations({ store }: { store: Store }) {
  const desk = store.desk.value
  if (!desk) return null
  return (
    <button type="button" onClick={() => chooseFiles(ELEVATION_TYPES, (files) => void desk.add(files))}>
      Open elevations…
    </button>
  )
}
