import type { Plugin } from 'vite'

/**
 * Leaves out of the build what no path of the program reaches, and what no bundler can tell by itself:
 * Leaflet's layers, controls and handlers that the map does without, with their pictures, GeoTIFF's decoders, whose place our own take, and
 * what SQLite would start workers of its own for. It stops the build where a package no longer looks as it did.
 */
export function unusedParts(): Plugin {
  return {
    name: 'unused-parts',
    apply: 'build',
    enforce: 'pre',
    resolveId(source, importer) {
      if (source === 'leaflet') return this.resolve('leaflet/dist/leaflet-src.esm.js', importer)
      return null
    },
    transform(code, id) {
      if (id.endsWith('leaflet-src.esm.js')) return { code: trimLeaflet(code), map: null }
      if (id.endsWith('leaflet.css')) return { code: withoutPictures(code), map: null }
      if (id.endsWith('geotiff/dist-module/compression/index.js'))
        return { code: withoutDecoders(code), map: null }
      if (id.endsWith('@sqlite.org/sqlite-wasm/dist/index.mjs'))
        return { code: withoutWorkers(code), map: null }
      return null
    },
  }
}

/** A statement that adds to one of Leaflet's classes, on one line or down to its closing brace. */
const ADDITION = /^(\w+)\.(?:include|addInitHook|mergeOptions)\((?:[^\n]*\);|[\s\S]*?\n\}\);)$/gm
/** A class that hangs under the name of another: `Control.Zoom = Zoom`. */
const ALIAS = /^(?:Control|control|CRS|GeoJSON|Icon|TileLayer|tileLayer|Polyline|SVG|Map)\.\w+ = \w+;$/gm
/** What a map has only for popups, tooltips, vector layers, controls, and for handlers that this one turns off. */
const NOT_OURS =
  /openPopup|_initOverlay|closePopupOnClick|openTooltip|getRenderer|[zZ]oomControl|attributionControl|boxZoom|doubleClickZoom|keyboard/

function trimLeaflet(code: string): string {
  let left = 0
  const trimmed = code
    .replace(ADDITION, (statement, owner) => {
      if (owner === 'Map' && !NOT_OURS.test(statement)) return statement
      left++
      return ''
    })
    .replace(ALIAS, '')
    // Vector drawing for Internet Explorer 8, and the pin that markers have where nobody gives them another.
    .replace(/^if \(Browser\.vml\) \{\n[^}]*\}$/m, '')
    .replace('new IconDefault()', 'null')
    // A class that nobody names can go: `extend` only makes it.
    .replace(/ = (\w+\.extend\()/g, ' = /*#__PURE__*/ $1')
  // Leaflet 1.9.4 has so many; another version asks for another look.
  if (left !== 24) throw new Error(`${left} statements of Leaflet left out`)
  return trimmed
}

/** Rules of Leaflet's stylesheet that fetch a picture: for its markers and its switch of layers, which the map does not have. */
const withoutPictures = (css: string): string => css.replace(/[^{}]*\{[^{}]*url\(images[^{}]*\}/g, '')

/** Decoders that the program replaces (files/tiff-decoders.ts) or refuses; what is not packed at all goes through `raw`, and JPEG is bounded by ours. */
const withoutDecoders = (code: string): string =>
  code.replace(
    /import\('\.\/(?!raw\.js|jpeg\.js)\w+\.js'\)/g,
    "Promise.reject(new Error('not a decoder of this program'))",
  )

/** The workers that SQLite would start for files of the browser's own, and its wasm, which is fetched by ourselves. */
function withoutWorkers(code: string): string {
  let left = 0
  const without = code.replace(/new URL\("(?:sqlite3[\w.-]*)", import\.meta\.url\)/g, () => {
    left++
    return 'new URL("about:blank")'
  })
  // The package of 3.54.1 has so many; another version asks for another look.
  if (left !== 3) throw new Error(`${left} files of SQLite left out`)
  return without
}
