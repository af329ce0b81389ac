import { afterAll, beforeAll, expect, test } from 'vitest'
import { complaintsOf } from './axe'
import { kept, papersMade, type Visit, visit } from './visit'

let at: Visit

/** One dark point, as a PNG. */
const PICTURE = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
  'base64',
)

beforeAll(async () => {
  at = await visit({ touch: true, serviceWorkers: 'allow' })
  await at.page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined))
  await at.server.close()
  await at.context.setOffline(true)
})
afterAll(() => at?.close())

test('the whole program works with the server gone, from the first visit on', async () => {
  const { page } = at
  for (const address of ['', 'index.html', 'online.html']) {
    await page.goto(`${at.url}${address}`)
    await page.locator('.circuits button').first().waitFor()
  }

  // What is loaded only when it is needed: the demo, the readers of elevation files, the coast, the papers, the search for remedies
  await page.goto(at.url)
  await page.getByRole('button', { name: 'Plans', exact: true }).click()
  await page.getByRole('button', { name: 'Demo plan' }).click()
  await page.getByRole('button', { name: 'Stores line' }).click()
  await page.getByRole('heading', { name: 'What would mend it?' }).waitFor()
  await page.getByRole('button', { name: 'Papers', exact: true }).click()
  await papersMade(page)

  expect(at.faults).toEqual([])
})

test('a line is walked, laid, read, broken and its fault found with a position and no network', async () => {
  const { page, context } = at
  await page.setViewportSize({ width: 360, height: 640 })
  await page.goto(at.url)
  await context.grantPermissions(['geolocation'])
  // A little beside the first bend of the line from Camp to Ford.
  await context.setGeolocation({ longitude: 67.0263, latitude: 48.61156, accuracy: 7 })

  await page.locator('.circuits button').first().waitFor()
  await page.getByRole('button', { name: /^River net/ }).click()
  await page.getByRole('button', { name: 'Camp – Ford', exact: true }).click()
  await page.getByRole('button', { name: 'Walk this line' }).click()
  const walk = page.getByRole('dialog', { name: /^Line \d+ · Camp → Ford/ })
  await walk.getByText(/^At tag/).waitFor()

  await walk.getByRole('button', { name: 'Use my position' }).click()
  await walk.getByText('± 7 m').waitFor()
  expect(await walk.locator('.next').textContent()).toMatch(/ m to .*(bend|Stream|road|track|splice)/)

  // The way that is walked is kept, and is a record once the device is let go.
  for (let step = 1; step <= 6; step++) {
    await context.setGeolocation({ longitude: 67.0263 + step * 1e-4, latitude: 48.61156, accuracy: 7 })
    await walk.getByText(`Keep the way I walk: ${step + 1} places`).waitFor()
  }
  await walk.getByRole('button', { name: 'Go by the tags' }).click()
  await kept(page, '"track"')

  // Behind the lock nothing is pressed by a tap.
  await walk.getByRole('button', { name: 'Hold to unlock' }).click()
  expect(await walk.getByRole('button', { name: /^Laid to here/ }).count()).toBe(0)
  await walk.getByRole('button', { name: 'Hold to unlock' }).click({ delay: 900 })
  await walk.getByRole('button', { name: /^Laid to here/ }).click()
  await walk.getByText(/^Laid: 0 m to \d+ m of wire\./).waitFor()
  await walk.getByRole('button', { name: 'Tested' }).click()
  await walk.getByRole('button', { name: 'Undo' }).click()
  await walk.getByText('Undone: tested.').waitFor()

  await walk.getByRole('button', { name: 'Note', exact: true }).click()
  await walk
    .getByLabel('Add a picture')
    .setInputFiles({ name: 'gate.png', mimeType: 'image/png', buffer: PICTURE })
  await walk.getByAltText('What will be kept').waitFor()
  await walk.getByRole('button', { name: 'Keep', exact: true }).click()
  await kept(page, 'data:image/jpeg')

  // From the far end the same line comes the other way round.
  await walk.getByRole('button', { name: 'Walk towards Camp' }).click()
  const back = page.getByRole('dialog', { name: /^Line \d+ · Ford → Camp/ })
  await back.getByText(/^At tag \d+\/\d+/).waitFor()
  await back.getByRole('button', { name: 'Walk towards Ford' }).click()
  await walk.getByRole('button', { name: 'Hold to unlock' }).click({ delay: 900 })

  // A reading as it should be, and one that is twice that.
  await walk.getByRole('button', { name: 'Next tag' }).click()
  const should = Number(/Should read ([\d.]+) Ω/.exec((await walk.locator('.reading').textContent())!)![1])
  await walk.getByLabel('Read, Ω').fill(String(should))
  await walk.getByRole('button', { name: 'Enter', exact: true }).click()
  await walk.getByText(/: as expected/).waitFor()
  await walk.getByLabel('Read, Ω').fill(String(2 * should))
  await walk.getByRole('button', { name: 'Enter', exact: true }).click()
  await walk.getByText(/a bad splice of/).waitFor()

  await walk.getByRole('button', { name: 'Fault' }).click()
  await walk.getByLabel('Your name, for the record').fill('Walker one')
  await walk.getByLabel('Fault: what is it?').fill('cut by a plough')
  await walk.getByRole('button', { name: 'Keep' }).click()
  await walk.getByText(/^Fault at \d+ m of wire is kept/).waitFor()
  await kept(page, 'cut by a plough')
  await kept(page, 'Walker one')

  expect(await complaintsOf(page)).toEqual([])
  await page.goBack()
  await walk.waitFor({ state: 'hidden' })
  await page.getByRole('button', { name: 'River net', exact: true }).click()

  // What is known of the fault, and what follows from it.
  await page.locator('summary', { hasText: 'Find it from what you know' }).click()
  await page.getByRole('button', { name: 'Add what is known' }).click()
  await page.getByLabel('Ohms read, Ω').fill('40')
  await page.getByLabel('Ohms read, Ω').blur()
  await page.getByText(/^Most likely a short/).waitFor()
  await page.getByRole('heading', { name: 'What to do next' }).waitFor()

  // To the next measurement, and what is read there is known to the finder.
  await page.getByRole('button', { name: 'Walk there' }).first().click()
  const search = page.getByRole('dialog', { name: /^Line \d+/ })
  await search.getByRole('button', { name: /^Next: / }).click()
  await search.getByLabel(/^Read, /).fill('12')
  await search.getByRole('button', { name: 'Enter', exact: true }).click()
  await search
    .locator('.reading [role=status]')
    .getByText(/^12(\.0)? /)
    .waitFor()
  await search.getByRole('button', { name: 'Close' }).click()
  await page.getByText(/^Read 12(\.0)? .* at \d+ m of wire/).waitFor()
  await page.getByText(/^(Most likely|One fault)/).waitFor()
  expect(at.faults).toEqual([])
})
