/** A picture that is kept with a plan has at most so many letters as a `data:` address: 100 KB. */
const MOST_LETTERS = 133_000
/** Its longer side at first, px, and how it shrinks until the picture is small enough. */
const SIDE_PX = 1280
const SHRINKS = 0.8
const LEAST_SIDE_PX = 200

/** A photo made small enough to be kept with a plan, as a `data:` address; null where the file is no picture that the browser reads. */
export async function smallPicture(file: Blob): Promise<string | null> {
  const picture = await createImageBitmap(file).catch(() => null)
  if (!picture) return null
  const canvas = document.createElement('canvas')
  const whole = Math.max(picture.width, picture.height)
  for (let sidePx = Math.min(SIDE_PX, whole); ; sidePx *= SHRINKS) {
    canvas.width = Math.max(1, Math.round((picture.width * sidePx) / whole))
    canvas.height = Math.max(1, Math.round((picture.height * sidePx) / whole))
    canvas.getContext('2d')!.drawImage(picture, 0, 0, canvas.width, canvas.height)
    const address = canvas.toDataURL('image/jpeg', 0.7)
    if (address.length <= MOST_LETTERS || sidePx < LEAST_SIDE_PX) return address
  }
}
