import { expect, test } from 'vitest'
import { ALL_CHECKS } from './all-checks'
import { sourcesList } from './sources-list'

test('SOURCES.md lists the checks as they are; `node scripts/list-sources.mjs` writes it anew', async () => {
  await expect(sourcesList(ALL_CHECKS)).toMatchFileSnapshot('./SOURCES.md')
})
