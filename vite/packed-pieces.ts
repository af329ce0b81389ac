import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { deflateRawSync } from 'node:zlib'
import type { Plugin } from 'vite'

const require = createRequire(import.meta.url)

/** A response that holds a file, which lies packed in the script. */
function unpacked(path: string): string {
  const packed = deflateRawSync(readFileSync(path), { level: 9 }).toString('base64')
  const bytes = `Uint8Array.from(atob('${packed}'), (each) => each.charCodeAt(0))`
  return `new Response(new Blob([${bytes}]).stream().pipeThrough(new DecompressionStream('deflate-raw')))`
}

interface Piece {
  /** The source that asks for it. */
  readonly from: string
  readonly replace: readonly (readonly [what: string, by: () => string])[]
}

const wasm = (from: string, name: string): Piece => ({
  from,
  replace: [
    [`import wasm from '${name}?url'`, () => ''],
    ['await fetch(wasm)', () => unpacked(require.resolve(name))],
  ],
})

const PIECES: readonly Piece[] = [
  {
    from: '/src/files/systems/epsg-systems.ts',
    replace: [
      [
        "const { default: table } = await import('./epsg-systems.txt?raw')",
        () => `const table = await ${unpacked('src/files/systems/epsg-systems.txt')}.text()`,
      ],
    ],
  },
  {
    from: '/src/map/backdrop/show-coast.ts',
    replace: [
      [
        "import('world-atlas/land-50m.json')",
        () =>
          `${unpacked(require.resolve('world-atlas/land-50m.json'))}.json().then((all) => ({ default: all }))`,
      ],
    ],
  },
  wasm('/src/jobs/code-reading.ts', 'zxing-wasm/reader/zxing_reader.wasm'),
  wasm('/src/jobs/maps/opened-map.ts', '@sqlite.org/sqlite-wasm/sqlite3.wasm'),
]

/** Large tables and machine code lie packed in the one file, and are unpacked when they are wanted: several workers carry the same. */
export function packedPieces(): Plugin {
  return {
    name: 'packed-pieces',
    enforce: 'pre',
    transform(code, id) {
      const piece = PIECES.find(({ from }) => id.replaceAll('\\', '/').endsWith(from))
      if (!piece) return null
      let changed = code
      for (const [what, by] of piece.replace) {
        if (!changed.includes(what)) throw new Error(`${piece.from} no longer holds ${what}`)
        changed = changed.replace(what, by)
      }
      return { code: changed, map: null }
    },
  }
}
