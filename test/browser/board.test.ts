import { execFileSync } from 'node:child_process'
import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { papersMade, type Visit, visit } from './visit'

let at: Visit
beforeAll(async () => {
  at = await visit()
  await at.page.locator('.zoom-buttons').waitFor()
})
afterAll(() => at?.close())

/** Presses of a pointer since the plan was empty. */
let clicks = 0
const button = (name: string) => at.page.getByRole('button', { name, exact: true })
async function press(name: string) {
  await button(name).click()
  clicks++
}
async function place(x: number, y: number) {
  await at.page.locator('#map').click({ position: { x, y } })
  clicks++
}
const text = async (selector: string) =>
  (await at.page.locator(selector).allTextContents()).join(' ').replace(/\s+/g, ' ')

test('a star of six telephones round a board is built in under twenty clicks, its faint calls are read and mended, its card and directory printed', async () => {
  const { page } = at
  await button('Plans').click()
  await button('New plan').click()
  // Out to where a line is so long that speech through two of them gets faint.
  for (let k = 0; k < 2; k++) await button('Farther').click()

  await press('Station')
  await place(480, 450)
  for (const [x, y] of [
    [330, 380],
    [420, 250],
    [640, 300],
    [700, 520],
    [560, 680],
    [300, 640],
  ] as const)
    await place(x, y)
  await press('← The whole plan')
  await press('Suggest nets for 7 stations')
  await press('Star with a board')
  await press('Draw the star with a board')
  expect(clicks).toBeLessThan(20)
  console.log('clicks', clicks)

  await page.getByRole('heading', { name: 'Who is on which jack?' }).waitFor()
  expect(await page.locator('.jacks tbody tr').count()).toBe(6)
  console.log(await text('.panel .card'))
  await page.screenshot({ path: '/tmp/boards/t1.png' })
})
