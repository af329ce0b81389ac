import { type FileStore, openPlanFile } from './open-save'

/** What else a dropped file may be for. */
interface DropStore extends FileStore {
  readonly desk: { peek(): { readonly add: (files: readonly File[]) => Promise<void> } | null }
}

/** Names of elevation files that are read here. */
export const ELEVATION_TYPES = '.tif,.tiff,.hgt,image/tiff'
const isElevation = (file: File): boolean => /\.(tiff?|hgt)$/i.test(file.name)

/** Opens what was dropped on the page, each file as what it is: elevations, or a plan. */
export async function openDroppedFiles(store: DropStore, files: readonly File[]): Promise<void> {
  const [plan] = files.filter((file) => !isElevation(file))
  if (plan) await openPlanFile(store, plan)
  await store.desk.peek()?.add(files.filter(isElevation))
}
