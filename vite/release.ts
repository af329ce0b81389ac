import { createHash } from 'node:crypto'
import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join, relative } from 'node:path'
import type { Plugin } from 'vite'

/** What is built and need not be kept: the worker keeps itself, and the picture is for shop windows. */
const NOT_KEPT = ['sw.js', 'kept-files.js', 'screenshot.png']
const PAGES = ['index.html', 'online.html']
/** Where the pages say which release they are of. */
const PLACE = '{{release}}'

/**
 * Names the release by what it holds, writes the name into its pages, and tells the service worker (public/sw.js) which files are
 * of it, each with its hash.
 */
export function release(): Plugin {
  return {
    name: 'release',
    transformIndexHtml: {
      order: 'post',
      handler: (html, { server }) => (server ? html.replace(PLACE, 'in the making') : html),
    },
    writeBundle: { order: 'post', sequential: true, handler: ({ dir }) => nameRelease(dir!) },
  }
}

/** Does so in a folder that holds all else of the release: from the disk, so that what is hashed is what is served. */
export function nameRelease(folder: string): void {
  const { version } = JSON.parse(readFileSync('package.json', 'utf8'))
  const paths = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).replaceAll('\\', '/'))
    .filter((path) => !NOT_KEPT.includes(path))
    .sort()
  const content = (path: string) => readFileSync(join(folder, path))
  const whole = createHash('sha256')
  for (const path of paths) whole.update(path).update(content(path))
  const name = `${version} ${whole.digest('hex').slice(0, 8)}`
  for (const page of PAGES)
    writeFileSync(join(folder, page), content(page).toString('utf8').replace(PLACE, name))
  const files = Object.fromEntries(
    paths.map((path) => [
      // Many servers answer index.html with a redirect, which a page may not be opened from.
      path === 'index.html' ? './' : path,
      createHash('sha256').update(content(path)).digest('hex'),
    ]),
  )
  writeFileSync(join(folder, 'kept-files.js'), `self.RELEASE = ${JSON.stringify({ name, files })}\n`)
}
