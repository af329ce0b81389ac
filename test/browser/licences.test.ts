import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, inject, test } from 'vitest'
import { packageFolder } from '../../vite/licences'

/** Licences that ask for no more than that their text goes along. */
const ALLOWED = ['MIT', 'ISC', 'BSD-2-Clause', 'BSD-3-Clause', 'Apache-2.0', '0BSD', 'Unlicense', 'CC0-1.0']
/** Data under terms of its own: it may be passed on with these words beside it. */
const OF_ITS_OWN = 'used under the Terms of Use of the EPSG Dataset'
/** Terms without a copyright line: the work is given to everyone. */
const GIVEN_AWAY = ['Unlicense', 'CC0-1.0']

const shipped = () =>
  readFileSync(join(inject('site'), 'licences.txt'), 'utf8')
    .split(`\n\n${'-'.repeat(80)}\n\n`)
    .slice(1)
    .map((part) => {
      const [, title, licence, text] = /^(.+)\n(.+)\n\n([\s\S]+)$/.exec(part)!
      return { title: title!, licence: licence!, text: text! }
    })

test('every package that is shipped stands in licences.txt under terms that allow it', () => {
  const packages = shipped()
  for (const { title, licence, text } of packages) {
    for (const each of licence.split(' AND ')) expect([...ALLOWED, OF_ITS_OWN], title).toContain(each)
    if (licence === OF_ITS_OWN) continue
    expect(text.length, title).toBeGreaterThan(400)
    if (!GIVEN_AWAY.includes(licence)) expect(text, title).toMatch(/copyright|©/i)
  }
  const named = packages.map(({ title }) => title.replace(/ \S+$/, ''))
  const { dependencies } = JSON.parse(readFileSync('package.json', 'utf8'))
  for (const name of Object.keys(dependencies)) {
    expect(named, name).toContain(name)
  }
})

test('nothing is shipped that the program never reaches', () => {
  const site = inject('site')
  const names = readdirSync(join(site, 'assets'))
  // Decoders that the reader of elevation files replaces, and the pictures of Leaflet's markers and switch of layers.
  const unwanted = /^(lerc|zstd|webimage|pako|lzw|deflate|packbits)|\.png$/
  expect(names.filter((name) => unwanted.test(name))).toEqual([])
})

test('a module belongs to the innermost package that it lies in', () => {
  expect(packageFolder('/a/node_modules/geotiff/dist/x.js')).toBe('/a/node_modules/geotiff')
  expect(packageFolder('/a/node_modules/p/node_modules/@s/q/x.js?v=1')).toBe(
    '/a/node_modules/p/node_modules/@s/q',
  )
  expect(packageFolder('/a/src/main.tsx')).toBeUndefined()
})
