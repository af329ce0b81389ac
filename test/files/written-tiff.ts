/** Values of a tag: whole numbers of 16 bits, of 32, floats of 64, or text. */
type Values =
  | { readonly shorts: readonly number[] }
  | { readonly longs: readonly number[] }
  | { readonly doubles: readonly number[] }
  | { readonly text: string }

/** Tags of one image by their numbers, and its only strip: 16-bit heights, row by row. */
export interface WrittenImage {
  readonly columns: number
  readonly rows: number
  readonly heights: readonly number[]
  readonly tags?: Readonly<Record<number, Values>>
}

/** A little-endian TIFF of these images, tag by tag (TIFF 6.0, Adobe 1992, section 2), so that a test says all that stands in it. */
export function writtenTiff(images: readonly WrittenImage[]): Uint8Array<ArrayBuffer> {
  const bytes: number[] = []
  const put = (value: number, length: number) => {
    for (let i = 0; i < length; i++) bytes.push(Math.floor(value / 256 ** i) % 256)
  }
  const setLong = (at: number, value: number) => {
    for (let i = 0; i < 4; i++) bytes[at + i] = Math.floor(value / 256 ** i) % 256
  }
  put(0x4949, 2)
  put(42, 2)
  let link = bytes.length
  put(0, 4)
  for (const { columns, rows, heights, tags = {} } of images) {
    const strip = bytes.length
    for (const height of heights) put(height, 2)
    const own: Record<number, Values> = {
      256: { longs: [columns] },
      257: { longs: [rows] },
      258: { shorts: [16] },
      259: { shorts: [1] },
      262: { shorts: [1] },
      273: { longs: [strip] },
      277: { shorts: [1] },
      278: { longs: [rows] },
      279: { longs: [heights.length * 2] },
      339: { shorts: [2] },
      ...tags,
    }
    const entries = Object.keys(own)
      .map(Number)
      .sort((a, b) => a - b)
      .map((tag) => ({ tag, ...packed(own[tag]!) }))
    // What is longer than its entry has room for lies before the directory.
    const places = entries.map(({ data }) => {
      const place = bytes.length
      if (data.length > 4) bytes.push(...data)
      return place
    })
    setLong(link, bytes.length)
    put(entries.length, 2)
    for (const [i, { tag, type, count, data }] of entries.entries()) {
      put(tag, 2)
      put(type, 2)
      put(count, 4)
      if (data.length > 4) put(places[i]!, 4)
      else bytes.push(...data, ...Array<number>(4 - data.length).fill(0))
    }
    link = bytes.length
    put(0, 4)
  }
  return Uint8Array.from(bytes)
}

function packed(values: Values): { type: number; count: number; data: readonly number[] } {
  const whole = (numbers: readonly number[], length: number) =>
    numbers.flatMap((n) => Array.from({ length }, (_, i) => Math.floor(n / 256 ** i) % 256))
  if ('shorts' in values) return { type: 3, count: values.shorts.length, data: whole(values.shorts, 2) }
  if ('longs' in values) return { type: 4, count: values.longs.length, data: whole(values.longs, 4) }
  if ('text' in values) {
    const data = [...new TextEncoder().encode(values.text), 0]
    return { type: 2, count: data.length, data }
  }
  return {
    type: 12,
    count: values.doubles.length,
    data: [...new Uint8Array(new Float64Array(values.doubles).buffer)],
  }
}
