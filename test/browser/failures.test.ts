import type { Page } from 'playwright-core'
import { afterEach, describe, expect, test } from 'vitest'
import { papersMade, type Visit, visit } from './visit'

let at: Visit
afterEach(() => at?.close())

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true })

/** Visits the site with other scripts in the place of some: nothing of this is shipped. */
async function visitWith(script: RegExp, instead: (code: string) => string) {
  const headers = { 'content-type': 'text/javascript', 'cache-control': 'no-store' }
  at = await visit({
    prepare: (context) =>
      context.route(script, async (route) => {
        const response = await route.fetch()
        await route.fulfill({ body: instead(await response.text()), headers })
      }),
  })
  await at.page.locator('.card h1').first().waitFor()
  return at.page
}

const throwsAtOnce = () => `throw new Error('planted: it never starts')`
/** The true worker, with one of its jobs throwing after it has begun. */
const throwsIn = (job: string) => (code: string) => {
  const found = new RegExp(`\\b${job}:(async)?\\(`)
  if (!found.test(code)) throw new Error(`the worker has no job "${job}"`)
  const throwing = `async()=>{await 0;throw Error('planted: it broke at work')}`
  return code.replace(found, (begin) => `${job}:${throwing},_${begin}`)
}

describe('a worker that fails is told in a sentence, and the page goes on', () => {
  test('papers: why they cannot be made, with a way to make them again', async () => {
    const page = await visitWith(/paper-worker.*\.js/, throwsAtOnce)
    await button(page, 'Papers').click()
    const alert = page.locator('.papers-failure')
    await alert.waitFor()
    expect(await alert.textContent()).toMatch(
      /Making the papers stopped unexpectedly \(.*planted: it never starts/,
    )
    expect(await button(page, 'Print').isDisabled()).toBe(true)
    // Once, not as an error of the page besides.
    expect(await page.locator('.failure').count()).toBe(0)
    await at.context.unroute(/paper-worker.*\.js/)
    // Odds that come in meanwhile make the papers anew by themselves, and take the button away.
    await Promise.race([button(page, 'Make them again').click(), alert.waitFor({ state: 'detached' })])
    await papersMade(page)
    expect(await alert.count()).toBe(0)
  })

  test('nets: the search ends with a sentence, and none stands for ever', async () => {
    const page = await visitWith(/terrain-worker.*\.js/, throwsIn('nets'))
    await page.locator('.card button', { hasText: 'Camp net' }).first().click()
    await page.getByRole('button', { name: /^Suggest nets/ }).click()
    const refusal = page.locator('.card [role="alert"]', { hasText: 'The work on the ground' })
    await refusal.waitFor()
    expect(await refusal.textContent()).toContain('stopped unexpectedly (planted: it broke at work)')
    expect(await page.locator('.work').count()).toBe(0)
  })

  test('circuits: the reach tables say why they stay away', async () => {
    const page = await visitWith(/circuit-worker.*\.js/, throwsIn('choices'))
    await page.locator('.card button', { hasText: 'Camp net' }).first().click()
    await page.getByText('What each choice would give').click()
    const refusal = page.locator('.card [role="alert"]', { hasText: 'Weighing the choices' })
    await refusal.waitFor()
    expect(await refusal.textContent()).toContain('planted: it broke at work')
  })
})

test('a report that throws keeps the figures, says so, and offers undo and a file', async () => {
  let planted = 0
  const page = await visitWith(/first-screen.*\.js/, (code) =>
    code.replace(/if\(!(\w+)\)throw Error\(`line \$\{/, (found, wire) => {
      planted += 1
      return found.replace(`!${wire}`, `!${wire}||globalThis.planted`)
    }),
  )
  expect(planted).toBeGreaterThan(0)
  // The ground comes after the plan, and would reckon all anew.
  await page.locator('.contour').first().waitFor({ state: 'attached' })
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
  at = await visit()
  const { page } = at
  await page.locator('.card h1').first().waitFor()
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
