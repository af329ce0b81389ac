/** Names of elevation files that are read here. */
export const ELEVATION_TYPES = '.tif,.tiff,.hgt,image/tiff'
export const HAZARD_TYPES = '.geojson,.json,application/geo+json'

/** Lets the person choose files of some types. */
export function chooseFiles(accept: string, onFiles: (files: readonly File[]) => void): void {
  const input = document.createElement('input')
  input.type = 'file'
  input.multiple = true
  input.accept = accept
  input.addEventListener('change', () => onFiles([...(input.files ?? [])]))
  input.click()
}

/** A browser says every few hundredths of a second that files are held over the page, and does not always say when they are gone. */
const HELD_MS = 300

/**
 * Takes files that are dropped anywhere on the page. Returns the undoing of itself.
 *
 * @param onHeld whether files are held over the page just now
 */
export function takeDroppedFiles(
  onFiles: (files: readonly File[]) => void,
  onHeld: (areHeld: boolean) => void,
): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined
  const letGo = () => {
    clearTimeout(timer)
    onHeld(false)
  }
  const holdsFiles = (event: DragEvent) => event.dataTransfer?.types.includes('Files') ?? false
  const over = (event: DragEvent) => {
    // Without this the browser would leave the page and show the file itself.
    if (!holdsFiles(event)) return
    event.preventDefault()
    onHeld(true)
    clearTimeout(timer)
    timer = setTimeout(letGo, HELD_MS)
  }
  const drop = (event: DragEvent) => {
    if (!holdsFiles(event)) return
    event.preventDefault()
    letGo()
    onFiles([...(event.dataTransfer?.files ?? [])])
  }
  addEventListener('dragover', over)
  addEventListener('drop', drop)
  return () => {
    removeEventListener('dragover', over)
    removeEventListener('drop', drop)
  }
}
