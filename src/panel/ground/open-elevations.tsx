import { requestPlace } from '../../state/requests'
import type { Store } from '../../state/store'
import { chooseFiles, ELEVATION_TYPES } from '../../storage/choose-files'

/** The way to elevations from a file. */
export function OpenElevations({ store }: { store: Store }) {
  const groundWorker = store.groundWorker.value
  if (!groundWorker) return null
  const open = async (files: readonly File[]) => {
    await groundWorker.add(files)
    const { middle } = store.grids.peek().at(-1) ?? {}
    // On an empty plan nothing else says where that ground is.
    if (middle && store.plan.peek().stations.size === 0) requestPlace(middle)
  }
  return (
    <button type="button" onClick={() => chooseFiles(ELEVATION_TYPES, (files) => void open(files))}>
      Open elevations…
    </button>
  )
}
