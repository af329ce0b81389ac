import { expect, test } from 'vitest'
import { BUILT_IN } from '../../src/catalog/built-in'
import { CELLS } from '../../src/catalog/cells'
import { SOURCED, withSources } from '../../src/catalog/sourced'

const bare = (list: readonly object[]) => list.map((entry) => ({ ...entry, sources: undefined }))

test('built-in.json has the figures as they are; `node scripts/list-figures.mjs` writes it anew', async () => {
  const { wires, sets, supplies } = SOURCED
  const cells = CELLS.map(({ id, name, volts, kg }) => ({ id, name, volts, kg }))
  const text = JSON.stringify(
    { wires: bare(wires), sets: bare(sets), supplies: bare(supplies), cells },
    null,
    1,
  )
  await expect(`${text}\n`).toMatchFileSnapshot('../../src/catalog/built-in.json')
})

test('what is built in finds its sources again', () => {
  for (const list of ['wires', 'sets', 'supplies'] as const)
    for (const [k, entry] of BUILT_IN[list].entries()) expect(withSources(entry)).toEqual(SOURCED[list][k])
  const own = { id: 'wd-1a', sources: { kgPerKm: 'Weighed.' } }
  expect(withSources(own).sources).toBe(own.sources)
  expect(withSources({ id: 'nobody' })).toEqual({ id: 'nobody' })
})
