import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Plugin } from 'vite'

/** A package of which something is shipped. */
interface Shipped {
  readonly name: string
  readonly version: string
  readonly licence: string
  readonly text: string
}

/** Terms as they stand in the repository of a package that comes without them. */
const TERMS_FOLDER = 'vite/terms'
/** What a package was forked from, whose terms go along with its own. */
const FORKED_FROM: Readonly<Record<string, string>> = { saxes: 'sax' }
/** Terms of data that come from no package. */
const OF_DATA = ['epsg-systems.txt']
/** How a package calls the file with its terms. */
const TERMS = /^(licen[cs]e|copying)/i
const RULE = `\n\n${'-'.repeat(80)}\n\n`

/**
 * Writes licences.txt: name, version, licence and terms of every package of which the build ships anything, workers included.
 * `worker` belongs among the plugins of the workers' builds, which end before the page's. The build stops where a package
 * comes without its terms.
 */
export function licences(): { readonly page: Plugin; readonly worker: Plugin } {
  const folders = new Set<string>()
  const collect: Plugin['generateBundle'] = (_options, bundle) => {
    for (const file of Object.values(bundle)) {
      if (file.type !== 'chunk') continue
      for (const id of file.moduleIds) {
        const folder = packageFolder(id)
        if (folder) folders.add(folder)
      }
    }
  }
  return {
    worker: { name: 'licences-of-workers', apply: 'build', generateBundle: collect },
    page: {
      name: 'licences',
      apply: 'build',
      generateBundle(options, bundle, isWrite) {
        ;(collect as (...args: unknown[]) => void).call(this, options, bundle, isWrite)
        const shipped = [...folders].map(shippedFrom).sort((a, b) => a.name.localeCompare(b.name))
        this.emitFile({ type: 'asset', fileName: 'licences.txt', source: licencesText(shipped) })
      },
    },
  }
}

/** The folder of the innermost package that a module lies in; undefined for our own. */
export function packageFolder(id: string): string | undefined {
  const path = id.replace(/^\0/, '').replace(/\?.*$/, '')
  return /^.*\/node_modules\/(?:@[^/]+\/)?[^/]+/.exec(path)?.[0]
}

function shippedFrom(folder: string): Shipped {
  const { name, version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'))
  const parent = FORKED_FROM[name]
  const text = [termsOf(folder, name), ...(parent ? [termsOf(join(folder, '..', parent), parent)] : [])].join(
    '\n\n',
  )
  return { name, version, licence: license, text }
}

function termsOf(folder: string, name: string): string {
  const file = readdirSync(folder).find((each) => TERMS.test(each))
  const ours = join(TERMS_FOLDER, `${name}.txt`)
  const path = file ? join(folder, file) : existsSync(ours) ? ours : undefined
  if (!path) throw new Error(`${name} comes without the text of its licence`)
  return readFileSync(path, 'utf8').trim()
}

const licencesText = (shipped: readonly Shipped[]): string =>
  [
    'What Fieldpair is made of besides its own code, and on what terms.',
    ...shipped.map(({ name, version, licence, text }) => `${name} ${version}\n${licence}\n\n${text}`),
    ...OF_DATA.map((file) => readFileSync(join(TERMS_FOLDER, file), 'utf8').trim()),
  ].join(RULE)
