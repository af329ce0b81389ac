import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterEach, expect, test } from 'vitest'
import { lineCode } from '../../src/files/carry/paper-code'
import { formatPlan } from '../../src/files/format-plan'
import { planFingerprint } from '../../src/files/plan-fingerprint'
import type { LineId } from '../../src/plan/id'
import type { Plan } from '../../src/plan/plan'
import { bigPlan, SIZES } from '../bench/big-plan'
import { todays } from '../cases'
import { demoPlan } from '../sheet/demo-source'
import { kept, type Visit, visit } from './visit'

const visits: Visit[] = []
afterEach(async () => {
  for (const each of visits.splice(0)) await each.close()
})
async function visitor(options: Parameters<typeof visit>[0] = {}): Promise<Visit> {
  const at = await visit(options)
  visits.push(at)
  return at
}

const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name })
async function choose(page: Page, entry: string) {
  await button(page, 'Plans').click()
  await button(page, entry).click()
}
const titleOf = (page: Page) => page.getByLabel('Title of the plan').inputValue()

/** The film of the large one takes as long as four other visits: two days of three another goes. */
const [PLAN] = todays(
  [
    { stations: 200, plan: () => bigPlan(SIZES[200]), leastCodes: 11 },
    { stations: 60, plan: () => bigPlan({ stations: 60, perCircuit: 10, bends: 4 }), leastCodes: 4 },
    { stations: 25, plan: () => bigPlan({ stations: 25, perCircuit: 5, bends: 2 }), leastCodes: 2 },
  ],
  3,
)

test(`a plan of ${PLAN!.stations} stations goes from one screen to another by codes and a camera alone`, async () => {
  const from = await visitor({ viewport: { width: 640, height: 640 } })
  const plan = { ...PLAN!.plan(), title: 'From screen to screen' }
  await from.page.locator('.circuits button').first().waitFor()
  const [chooser] = await Promise.all([
    from.page.waitForEvent('filechooser'),
    choose(from.page, 'Open a file…'),
  ])
  await chooser.setFiles({
    name: 'screen.plan.geojson',
    mimeType: 'application/geo+json',
    buffer: Buffer.from(formatPlan(plan)),
  })
  await expect.poll(() => titleOf(from.page)).toBe('From screen to screen')
  await choose(from.page, 'Hand the plan on…')
  await button(from.page, 'Show the codes').click()
  await button(from.page, 'Hold').click()
  const needed = Number(/(\d+) codes are needed/.exec((await from.page.locator('.carry').textContent())!)![1])
  expect(needed).toBeGreaterThanOrEqual(PLAN!.leastCodes)

  // The camera misses every third code: others take their place.
  const film: Buffer[] = []
  const shown = from.page.locator('.carry .code')
  for (let n = 0; film.length < needed + 8; n++) {
    if (n % 3 > 0) film.push(await from.page.screenshot({ type: 'jpeg', quality: 80 }))
    const number = await shown.getAttribute('data-number')
    await button(from.page, 'Next code').click()
    await expect.poll(() => shown.getAttribute('data-number')).not.toBe(number)
  }
  expect(from.faults).toEqual([])
  const path = join(mkdtempSync(join(tmpdir(), 'fieldpair-film-')), 'codes.mjpeg')
  // A camera sees each code for a while.
  writeFileSync(path, Buffer.concat(film.flatMap((picture) => Array.from({ length: 5 }, () => picture))))

  const to = await visitor({ camera: path })
  await to.page.locator('.circuits button').first().waitFor()
  await choose(to.page, 'Take one from a screen…')
  await button(to.page, 'Use the camera').click()
  await to.page.getByRole('heading', { name: 'A plan has come in' }).waitFor({ timeout: 45_000 })
  await to.page.locator('.carry').getByText('It is another plan').waitFor()
  await button(to.page, 'Open it as a plan of its own').click()
  await expect.poll(() => titleOf(to.page)).toBe('From screen to screen')
  expect(to.faults).toEqual([])
})

test('a link opens its plan beside the one on the table; back with both changed, the two are merged', async () => {
  const [base, crew] = [await visitor(), await visitor()]
  await base.page.locator('.circuits button').first().waitFor()
  await base.context.grantPermissions(['clipboard-read', 'clipboard-write'])
  const linkOf = async ({ page }: Visit) => {
    await choose(page, 'Hand the plan on…')
    const link = await page.locator('.carry input').inputValue()
    await button(page, 'Copy the link').click()
    await page.locator('.carry').getByRole('button', { name: 'Close' }).click()
    return link
  }
  const rename = async ({ page }: Visit, title: string) => {
    await page.getByLabel('Title of the plan').fill(title)
    await page.getByLabel('Title of the plan').press('Enter')
  }
  const open = async ({ page, url }: Visit, link: string) => {
    await page.goto(`${url}${new URL(link).hash}`)
    await page.getByRole('heading', { name: 'A plan has come in' }).waitFor()
    expect(page.url()).not.toContain('#plan')
  }
  await crew.context.grantPermissions(['clipboard-read', 'clipboard-write'])
  await crew.page.locator('.circuits button').first().waitFor()

  const link = await linkOf(base)
  await open(crew, link)
  await button(crew.page, 'Open it as a plan of its own').click()
  await rename(crew, 'Changed by the crew')

  // The base has changed nothing since: theirs is newer.
  const back = await linkOf(crew)
  await open(base, back)
  await base.page.getByText('gone on from where you handed it over').waitFor()
  await button(base.page, 'Leave it').click()

  // Now both have.
  await base.page.getByRole('button', { name: 'Stores line' }).click()
  await base.page.getByLabel('Name', { exact: true }).first().fill('Line to the stores')
  await base.page.getByLabel('Name', { exact: true }).first().press('Enter')
  await open(base, back)
  await base.page.getByText('since it was handed over both have been changed').waitFor()
  await button(base.page, 'Merge the two').click()
  await expect.poll(() => titleOf(base.page)).toBe('Changed by the crew')
  await base.page.getByText('The two plans are one.').waitFor()
  expect(await base.page.getByText('Line to the stores').count()).toBeGreaterThan(0)
  expect(base.faults).toEqual([])
  expect(crew.faults).toEqual([])
})

test('a link that was cut off is refused in a sentence and the plan on the table stays; the code of a line card leads to the line in the plan on the table, and else opens the line with its neighbours', async () => {
  const { page, url, faults } = await visitor()
  await page.locator('.circuits button').first().waitFor()
  const before = await titleOf(page)
  await page.goto(`${url}#plan=abcdef`)
  await page.getByText('has not come whole').waitFor()
  expect(await titleOf(page)).toBe(before)
  await button(page, 'Close').click()

  const fragmentOf = (plan: Plan, line: string) => {
    const wish = { fingerprint: planFingerprint(plan), mostLetters: 1003 }
    return new URL(lineCode(url, plan, line as LineId, wish)!.text).hash
  }
  // Whoever has changed it has it kept.
  const camp = { ...demoPlan(), title: 'Our camp' }
  await page.getByLabel('Title of the plan').fill(camp.title)
  await page.getByLabel('Title of the plan').press('Enter')
  await kept(page, camp.title)

  await page.goto(`${url}${fragmentOf(camp, 'camp-gate')}`)
  await page.getByRole('heading', { name: 'A line has come in' }).waitFor()
  await page.getByText('the paper is of that very state').waitFor()
  await button(page, 'Go to the line').click()
  await expect.poll(() => page.locator('.card h1').first().textContent()).toContain('Road gate')
  expect(await titleOf(page)).toBe(camp.title)

  const other = bigPlan({ stations: 25, perCircuit: 5, bends: 2 })
  await page.goto(`${url}${fragmentOf(other, 'l2')}`)
  await page.getByText('is not in this browser').waitFor()
  await button(page, 'Open it as a plan of its own').click()
  await expect.poll(() => titleOf(page)).toContain('line 2')
  await expect.poll(() => page.locator('.card h1').first().textContent()).toContain('Post 2')

  // The camp is no longer on the table, but it is kept.
  await page.goto(`${url}${fragmentOf(camp, 'shed-pump')}`)
  await page.getByText('which is kept in this browser').waitFor()
  await button(page, 'Open that plan at the line').click()
  await expect.poll(() => titleOf(page)).toBe(camp.title)
  await expect.poll(() => page.locator('.card h1').first().textContent()).toContain('Pump')
  expect(faults).toEqual([])
})
