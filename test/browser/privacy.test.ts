import { afterAll, beforeAll, expect, test } from 'vitest'
import { type Visit, visit } from './visit'

let at: Visit

beforeAll(async () => {
  at = await visit()
})
afterAll(() => at?.close())

const reaches = (address: string) =>
  at.page.evaluate(
    (url) =>
      fetch(url, { mode: 'no-cors' }).then(
        () => 'answered',
        () => 'refused',
      ),
    address,
  )

/** The policy that each refusal named, as the browser told the page. */
const watchPolicy = () =>
  at.page.evaluate(() => {
    const seen: string[] = []
    Object.assign(window, { refusals: seen })
    document.addEventListener('securitypolicyviolation', (event) => seen.push(event.effectiveDirective))
  })
const refusals = () => at.page.evaluate(() => (window as unknown as { refusals: string[] }).refusals)

/** Nor does what keeps it for use without a network: see the test that goes offline. */
test('the page asks nobody else for anything', async () => {
  await at.page.locator('.zoom-buttons').waitFor()
  expect(at.faults).toEqual([])
})

test('its policy refuses a request to another origin', async () => {
  await watchPolicy()
  expect(await reaches('https://tiles.example/1/1/1.png')).toBe('refused')
  expect(await refusals()).toEqual(['connect-src'])
})

test('its policy lets the map in only where a person has turned it on', async () => {
  await at.page.goto(`${at.url}online.html`)
  await watchPolicy()
  await reaches('https://tiles.example/1/1/1.png')
  expect(await refusals()).toEqual([])
  await reaches('http://tiles.example/1/1/1.png')
  expect(await refusals()).toEqual(['connect-src'])
})
