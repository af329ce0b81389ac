import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { chromium, type Page } from 'playwright-core'
import { expect, inject, test } from 'vitest'
import { findBrowser } from '../../scripts/browser.mjs'
import { serveFaulty } from './faulty-server'

/** `CRASHES=30 npx vitest run --project browser test/browser/crash.test.ts` for a longer look. */
const CRASHES = Number(process.env.CRASHES ?? 2)

/** A browser as a person starts it, so that it can be killed as the system does, with no time for a last word. */
async function startBrowser(profile: string) {
  const port = join(profile, 'DevToolsActivePort')
  rmSync(port, { force: true })
  const args = [
    '--headless=new',
    '--no-sandbox',
    '--disable-gpu',
    '--no-first-run',
    '--remote-debugging-port=0',
  ]
  const child: ChildProcess = spawn(findBrowser()!, [...args, `--user-data-dir=${profile}`, 'about:blank'], {
    stdio: 'ignore',
  })
  // Its number has come when the line after it has: the file is there before it is written.
  const number = () => (existsSync(port) ? /^(\d+)\n./.exec(readFileSync(port, 'utf8'))?.[1] : undefined)
  while (!number()) await new Promise((done) => setTimeout(done, 50))
  const browser = await chromium.connectOverCDP(`http://127.0.0.1:${number()}`)
  const page = browser.contexts()[0]!.pages()[0] ?? (await browser.contexts()[0]!.newPage())
  const kill = async () => {
    const gone = once(child, 'exit')
    child.kill('SIGKILL')
    await gone
    await browser.close().catch(() => undefined)
  }
  return { page, kill }
}

/** A second of the page's own: on a machine that starves it its timers are late, and those that keep the plan with them. */
const BEAT_MS = 50
const beatsOf = (page: Page) => page.evaluate(() => (window as unknown as { beats: number }).beats)
const letBeat = (page: Page) =>
  page.evaluate((ms) => {
    const at = Object.assign(window, { beats: 0 })
    setInterval(() => {
      at.beats += 1
    }, ms)
  }, BEAT_MS)

const title = (page: Page) => page.getByLabel('Title of the plan')

test(
  `a browser that is killed at any moment loses at most the last second of typing (${CRASHES} times)`,
  async () => {
    const profile = mkdtempSync(join(tmpdir(), 'fieldpair-crash-'))
    const server = await serveFaulty(inject('site'))
    let count = 1000
    /** The least that must be there after the next start. */
    let kept = 0
    const losses: number[] = []
    for (let crash = 0; crash <= CRASHES; crash++) {
      const { page, kill } = await startBrowser(profile)
      await page.goto(server.url)
      await page.locator('.circuits button').first().waitFor()
      const found = Number(/^Net (\d+)$/.exec(await title(page).inputValue())?.[1] ?? 0)
      expect(found, `after crash ${crash}`).toBeGreaterThanOrEqual(kept)
      if (crash > 0) losses.push(count - found)
      if (crash < CRASHES) {
        const typed: { readonly count: number; readonly beat: number }[] = []
        await letBeat(page)
        const end = Date.now() + 300 + Math.random() * 2500
        while (Date.now() < end) {
          count += 1
          await title(page).fill(`Net ${count}`)
          typed.push({ count, beat: await beatsOf(page) })
          await page.waitForTimeout(40)
        }
        const lastBeat = typed.at(-1)!.beat
        await kill()
        kept = typed.findLast(({ beat }) => beat < lastBeat - 1000 / BEAT_MS)?.count ?? Math.max(kept, found)
      } else await kill()
    }
    if (CRASHES > 2) console.log(`letters lost at each crash, one each 40 ms or slower: ${losses.join(' ')}`)
    await server.close()
    rmSync(profile, { recursive: true, force: true, maxRetries: 3 })
  },
  60_000 + CRASHES * 15_000,
)
