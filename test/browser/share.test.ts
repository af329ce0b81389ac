import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterAll, expect, inject, test } from 'vitest'
import { startBox } from '../../scripts/share/box.mjs'
import { findNatsServer, installNatsServer } from '../../scripts/share/nats-server.mjs'
import { complaintsOf } from './axe'
import { kept, newcomer } from './visit'

const nats = findNatsServer() ?? installNatsServer()
const folder = mkdtempSync(join(tmpdir(), 'box-'))
const ends: (() => Promise<unknown>)[] = []
afterAll(async () => {
  for (const end of ends.reverse()) await end()
  rmSync(folder, { recursive: true, force: true })
})

const box = (port: number) => startBox({ folder, site: inject('site'), nats: nats!, port, host: '127.0.0.1' })
const titleOf = (page: Page) => page.getByLabel('Title of the plan').inputValue()
async function entitle(page: Page, title: string) {
  await page.getByLabel('Title of the plan').fill(title)
  await page.getByLabel('Title of the plan').press('Tab')
}
async function visitor(address: string): Promise<Page> {
  const context = await newcomer()
  ends.push(() => context.close())
  const page = await context.newPage()
  await page.goto(address)
  return page
}
const strip = (page: Page) => page.locator('.together-strip')

/** Without nats-server there is no box: `apt-get install nats-server` brings it. */
test.skipIf(!nats)(
  'two pages join one plan by an invitation, part when the box dies, and meet when it is back',
  async () => {
    const first = await box(0)
    ends.push(() => first.stop())
    const one = await visitor(`http://localhost:${first.port}/`)
    await one.locator('.circuits button').first().waitFor()
    await one.getByRole('button', { name: 'Plans' }).click()
    await one.getByRole('button', { name: 'Change it together…' }).click()
    await one.getByRole('button', { name: 'Share over this box' }).click()
    await one.locator('.together-mark.together').waitFor()
    const invitation = await one.locator('.together input[readonly]').inputValue()
    expect(await complaintsOf(one)).toEqual([])
    await one.getByRole('button', { name: 'Close' }).click()

    const two = await visitor(invitation)
    await two.locator('.together-mark.together').waitFor()
    expect(two.url()).not.toContain('join')
    await entitle(one, 'From one')
    await expect.poll(() => titleOf(two)).toBe('From one')
    await entitle(two, 'From two')
    await expect.poll(() => titleOf(one)).toBe('From two')
    // Undo is of one's own, and leaves what the other did.
    await one.getByRole('button', { name: 'Undo' }).click()
    expect(await titleOf(one)).toBe('From two')

    process.kill(first.natsPid()!, 'SIGKILL')
    await first.stop()
    for (const page of [one, two]) await page.locator('.together-mark.apart').waitFor()
    await entitle(one, 'Apart, one')
    await expect.poll(() => strip(one).textContent()).toContain('1 step of yours wait')
    await entitle(two, 'Apart, two')
    await expect.poll(() => strip(two).textContent()).toContain('1 step of yours wait')

    const second = await box(first.port)
    ends.push(() => second.stop())
    for (const page of [one, two])
      await expect.poll(() => strip(page).textContent(), { timeout: 30_000 }).toContain('1 thing to choose')
    expect(await titleOf(one)).toBe(await titleOf(two))
    await strip(one).click()
    expect(await complaintsOf(one)).toEqual([])
    await one.getByRole('button', { name: 'Close' }).click()
    await one.locator('.panel .choices-of button').filter({ hasText: 'Apart, one' }).click()
    await expect.poll(() => titleOf(two)).toBe('Apart, one')
    // A page that is loaded again goes on with the same plan.
    await kept(two, 'Apart, one')
    await two.reload()
    await two.locator('.together-mark.together').waitFor()
    await expect.poll(() => titleOf(two)).toBe('Apart, one')
  },
  120_000,
)
