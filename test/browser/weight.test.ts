import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { expect, inject, test } from 'vitest'

const MOST_KB = 130

test('the first screen needs at most 130 KB of gzipped script', () => {
  const site = inject('site')
  const page = readFileSync(join(site, 'index.html'), 'utf8')
  const scripts = [...page.matchAll(/(?:src|href)="\.\/(assets\/[^"]+\.js)"/g)].map((match) => match[1]!)
  expect(scripts.length).toBeGreaterThan(0)
  const bytes = scripts.map((name) => gzipSync(readFileSync(join(site, name))).length)
  expect(bytes.reduce((sum, each) => sum + each, 0) / 1024).toBeLessThan(MOST_KB)
})
