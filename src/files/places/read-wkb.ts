/** A point, or the corners of a line or of one ring of an area. */
export interface Shape {
  readonly isPoint: boolean
  /** x, y, and z where there is one. */
  readonly coordinates: readonly (readonly number[])[]
}

/** Geometries inside one another, at most. */
const DEEPEST = 8
const [POINT, LINE, AREA, POINTS, LINES, AREAS, COLLECTION] = [1, 2, 3, 4, 5, 6, 7]

/**
 * The shapes of a geometry in well-known binary; undefined where it is broken or of a kind that is not read, such as curves.
 *
 * Sources: OGC 06-103r4, Simple Feature Access 1 (2011), section 8.2; a count is held against the bytes that are left before anything is reserved.
 */
export function readWkb(bytes: Uint8Array): readonly Shape[] | undefined {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const shapes: Shape[] = []
  let at = 0

  const geometry = (depth: number): boolean => {
    if (depth > DEEPEST || at + 5 > bytes.length) return false
    const little = view.getUint8(at) === 1
    const word = () => {
      at += 4
      return view.getUint32(at - 4, little)
    }
    at += 1
    const type = word()
    const kind = type % 1000
    const extra = Math.floor(type / 1000)
    if (extra > 3) return false
    const size = [2, 3, 3, 4][extra]!
    const count = (least: number): number | undefined => {
      if (at + 4 > bytes.length) return undefined
      const n = word()
      return n * least <= bytes.length - at ? n : undefined
    }
    const corner = (): readonly number[] => {
      const values = Array.from({ length: size }, (_, i) => view.getFloat64(at + 8 * i, little))
      at += 8 * size
      // A measure in the third place is no height.
      return extra === 2 ? values.slice(0, 2) : values.slice(0, 3)
    }
    const corners = (): readonly (readonly number[])[] | undefined => {
      const n = count(8 * size)
      return n === undefined ? undefined : Array.from({ length: n }, corner)
    }
    if (kind === POINT) {
      if (at + 8 * size > bytes.length) return false
      const place = corner()
      // An empty point has no numbers.
      if (!Number.isNaN(place[0]!)) shapes.push({ isPoint: true, coordinates: [place] })
      return true
    }
    if (kind === LINE) {
      const coordinates = corners()
      if (coordinates) shapes.push({ isPoint: false, coordinates })
      return coordinates !== undefined
    }
    if (kind === AREA) {
      const rings = count(4)
      for (let i = 0; i < (rings ?? 0); i++) {
        const coordinates = corners()
        if (!coordinates) return false
        shapes.push({ isPoint: false, coordinates })
      }
      return rings !== undefined
    }
    if (![POINTS, LINES, AREAS, COLLECTION].includes(kind)) return false
    const parts = count(5)
    for (let i = 0; i < (parts ?? 0); i++) if (!geometry(depth + 1)) return false
    return parts !== undefined
  }
  try {
    return geometry(0) ? shapes : undefined
  } catch (error) {
    // It ends within its numbers.
    if (error instanceof RangeError) return undefined
    throw error
  }
}
