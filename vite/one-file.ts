import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { defineConfig, type Plugin, type Rollup } from 'vite'
import { packedPieces } from './packed-pieces.ts'
import { unusedParts } from './unused-parts.ts'

const PAGE = 'index.html'
/** What the page fetches by its name, and what comes in its place. */
const FETCHED = { './demo.plan.geojson': 'application/geo+json', './demo.terrain.tif': 'image/tiff' }
const WORKER = /new Worker\(new URL\('([^']+)', import\.meta\.url\), \{ type: 'module' \}\)/g

/** The folder of the site that this is the one file of: it has its name from there. */
const SITE = process.env.SITE ?? 'dist'

/** The build that puts the whole program into one page: scripts, workers, styles, the demo. It opens from a disk with no server. */
export default defineConfig({
  base: './',
  publicDir: false,
  build: {
    target: 'es2022',
    assetsInlineLimit: () => true,
    cssCodeSplit: false,
    modulePreload: false,
    // All in one piece is what is wanted here.
    chunkSizeWarningLimit: 9999,
    rolldownOptions: { checks: { pluginTimings: false }, output: { codeSplitting: false } },
  },
  worker: {
    format: 'iife',
    plugins: () => [unusedParts(), packedPieces()],
    rolldownOptions: { output: { codeSplitting: false } },
  },
  plugins: [unusedParts(), packedPieces(), piecesInside(), onePage()],
})

/** Workers come as text, and what is fetched as an address that holds it. */
function piecesInside(): Plugin {
  return {
    name: 'pieces-inside',
    enforce: 'pre',
    transform(code, id) {
      if (!id.includes('/src/')) return null
      const imports: string[] = []
      let changed = code.replace(WORKER, (_call, path: string) => {
        const name = `Inside${imports.length}`
        imports.push(`import ${name} from '${path}?worker&inline'\n`)
        return `new ${name}()`
      })
      for (const [path, type] of Object.entries(FETCHED))
        changed = changed.replace(`'${path}'`, () => JSON.stringify(addressOf(`public/${path}`, type)))
      return changed === code ? null : { code: imports.join('') + changed, map: null }
    },
  }
}

/** Writes scripts and styles into the page, and a policy that lets in these and no others, each by its hash. */
function onePage(): Plugin {
  return {
    name: 'one-page',
    enforce: 'post',
    transformIndexHtml: {
      order: 'pre',
      // The page gets its text instead: left there, Vite would say at every build that it cannot take it in.
      handler: (page) => page.replace(/\s*<script src="\/start\.js"><\/script>/, ''),
    },
    generateBundle: {
      order: 'post',
      handler(_options, bundle) {
        const page = bundle[PAGE]
        if (page?.type !== 'asset') throw new Error('the build has no page')
        page.source = pageWithAll(String(page.source), Object.values(bundle))
        for (const name of Object.keys(bundle)) if (name !== PAGE) delete bundle[name]
      },
    },
  }
}

type Piece = Rollup.OutputAsset | Rollup.OutputChunk

function pageWithAll(page: string, pieces: readonly Piece[]): string {
  const chunks = pieces.filter((piece): piece is Rollup.OutputChunk => piece.type === 'chunk')
  if (chunks.length !== 1) throw new Error(`${chunks.length} scripts where all should be one`)
  const program = insideScript(chunks[0]!.code.replaceAll('__VITE_PRELOAD__', 'void 0'))
  const first = insideScript(readFileSync('public/start.js', 'utf8'))
  const style = pieces
    .filter((piece): piece is Rollup.OutputAsset => piece.type === 'asset' && piece.fileName.endsWith('.css'))
    .map((piece) => String(piece.source))
    .join('\n')
  const policy = [
    "default-src 'none'",
    // Workers are made of text that the page holds, and have its policy.
    `script-src ${hashOf(first)} ${hashOf(program)} blob: 'wasm-unsafe-eval'`,
    `style-src ${hashOf(style)}`,
    'img-src data: blob:',
    'font-src data:',
    'connect-src data: blob:',
    'worker-src blob:',
    "base-uri 'none'",
    "form-action 'none'",
  ]
  return page
    .replace(/\s*<script[^>]*\ssrc=[^>]*><\/script>/g, '')
    .replace(/\s*<link rel="(?:stylesheet|modulepreload|manifest)"[^>]*>/g, '')
    .replace(
      /href="[^"]*icon[^"]*\.svg[^"]*"/,
      () => `href="${addressOf('public/icon.svg', 'image/svg+xml')}"`,
    )
    .replace('{{policy}}', policy.join('; '))
    .replace('{{release}}', releaseName())
    .replace('</head>', () => `<script>${first}</script>\n    <style>${style}</style>\n  </head>`)
    .replace(
      '</body>',
      () => `<template id="licences"><pre>${licencesText()}</pre></template>
    <script type="module">${program}</script>\n  </body>`,
    )
}

function releaseName(): string {
  const name = /<meta name="release" content="([^"]*)"/.exec(readFileSync(join(SITE, PAGE), 'utf8'))?.[1]
  if (!name) throw new Error(`${SITE} holds no release`)
  return name
}

/** The terms of what is shipped go along, unseen. */
const licencesText = (): string =>
  readFileSync(join(SITE, 'licences.txt'), 'utf8').replaceAll('&', '&amp;').replaceAll('<', '&lt;')

const addressOf = (path: string, type: string): string =>
  `data:${type};base64,${readFileSync(path).toString('base64')}`

/** A script's text, with nothing in it that would end it or begin a comment where it stands in a page. */
const insideScript = (code: string): string => code.replace(/<(\/script|!--)/gi, '\\x3C$1')

const hashOf = (text: string): string => `'sha256-${createHash('sha256').update(text).digest('base64')}'`
