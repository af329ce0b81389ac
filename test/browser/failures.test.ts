import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { groundIsThere, papersMade, type Visit, visit } from './visit'

let at: Visit
let page: Page
/** Whether the papers' worker is to fail: read when it is asked for. */
let papersFail = true

const button = (name: string) => page.getByRole('button', { name, exact: true })

const throwsAtOnce = () => `throw new Error('planted: it never starts')`
/** The true worker, with one of its jobs throwing after it has begun. */
const throwsIn = (job: string) => (code: string) => {
  const found = new RegExp(`\\b${job}:(async)?\\(`)
  if (!found.test(code)) throw new Error(`the worker has no job "${job}"`)
  const throwing = `async()=>{await 0;throw Error('planted: it broke at work')}`
  return code.replace(found, (begin) => `${job}:${throwing},_${begin}`)
}

/** The first screen, with a report that throws for as long as `planted` is true. */
const throwsInReport = (code: string) => {
  const planted = code.replace(/if\(!(\w+)\)throw Error\(`line \$\{/, (found, wire) =>
    found.replace(`!${wire}`, `!${wire}||globalThis.planted`),
  )
  if (planted === code) throw new Error('the first screen has no such line')
  return planted
}

/** Scripts in the place of others: nothing of this is shipped. */
const INSTEAD: readonly (readonly [RegExp, (code: string) => string])[] = [
  [/paper-worker.*\.js/, (code) => (papersFail ? throwsAtOnce() : code)],
  [/terrain-worker.*\.js/, throwsIn('nets')],
  [/circuit-worker.*\.js/, throwsIn('choices')],
  [/first-screen.*\.js/, throwsInReport],
]

beforeAll(async () => {
  const headers = { 'content-type': 'text/javascript', 'cache-control': 'no-store' }
  at = await visit({
    prepare: async (context) => {
      for (const [script, instead] of INSTEAD)
        await context.route(script, async (route) => {
          const response = await route.fetch()
          await route.fulfill({ body: instead(await response.text()), headers })
        })
    },
  })
  page = at.page
  await page.locator('.card h1').first().waitFor()
})
afterAll(() => at?.close())

describe('a worker that fails is told in a sentence, and the page goes on', () => {
  test('papers: why they cannot be made, with a way to make them again', async () => {
    await button('Papers').click()
    const alert = page.locator('.papers-failure')
    await alert.waitFor()
    expect(await alert.textContent()).toMatch(
      /Making the papers stopped unexpectedly \(.*planted: it never starts/,
    )
    expect(await button('Print').isDisabled()).toBe(true)
    // Once, not as an error of the page besides.
    expect(await page.locator('.failure').count()).toBe(0)
    papersFail = false
    // Odds that come in meanwhile make the papers anew by themselves, and take the button away.
    await Promise.race([button('Make them again').click(), alert.waitFor({ state: 'detached' })])
    await papersMade(page)
    expect(await alert.count()).toBe(0)
    await button('Close').click()
  })

  test('nets: the search ends with a sentence, and none stands for ever', async () => {
    await page.locator('.card button', { hasText: 'Camp net' }).first().click()
    await page.getByRole('button', { name: /^Suggest nets/ }).click()
    const refusal = page.locator('.card [role="alert"]', { hasText: 'The work on the ground' })
    await refusal.waitFor()
    expect(await refusal.textContent()).toContain('stopped unexpectedly (planted: it broke at work)')
    expect(await page.locator('.work').count()).toBe(0)
  })

  test('circuits: the reach tables say why they stay away', async () => {
    await page.getByText('What each choice would give').click()
    const refusal = page.locator('.card [role="alert"]', { hasText: 'Weighing the choices' })
    await refusal.waitFor()
    expect(await refusal.textContent()).toContain('planted: it broke at work')
    await button('← The whole plan').click()
  })
})

test('a report that throws keeps the figures, says so, and offers undo and a file', async () => {
  // The ground comes after the plan, and would reckon all anew.
  await groundIsThere(page)
  await page.evaluate('globalThis.planted = true')
  await page.getByRole('group', { name: 'Weather' }).getByRole('button', { name: 'wet' }).click()
  const alert = page.locator('.failure')
  await alert.waitFor()
  expect(await alert.textContent()).toContain('These figures are from before your last change')
  await page.evaluate('globalThis.planted = false')
  await alert.getByRole('button', { name: 'Undo' }).click()
  await expect.poll(() => alert.count()).toBe(0)
})

test('an error of the page and a forgotten rejection are told once, with a way to save the plan', async () => {
  await page.evaluate(() => {
    for (let i = 0; i < 3; i++) setTimeout(() => void Promise.reject(new Error('planted: nobody waits')))
  })
  const alert = page.locator('.failure')
  await alert.waitFor()
  expect(await alert.textContent()).toContain('Something did not work (planted: nobody waits)')
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.evaluate(() => {
      // Without the browser's own dialog, which no test can answer.
      Object.assign(window, { showSaveFilePicker: undefined })
      document.querySelectorAll<HTMLButtonElement>('.failure button')[1]!.click()
    }),
  ])
  expect(file.suggestedFilename()).toMatch(/\.plan\.geojson$/)
  await alert.getByRole('button', { name: 'Understood' }).click()
  expect(await alert.count()).toBe(0)
})
