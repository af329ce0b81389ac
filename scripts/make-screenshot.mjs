// Writes public/screenshot.png: the demo plan as a person first sees it.
import { chromium } from 'playwright-core'
import { build, preview } from 'vite'
import { findBrowser } from './browser.mjs'
import { ensureDependencies, ROOT, stop } from './dependencies.mjs'

ensureDependencies()
process.chdir(ROOT)
const executablePath = findBrowser() ?? stop('This needs a Chromium: install one, or name yours in CHROMIUM.')

await build({ logLevel: 'warn' })
const server = await preview({ logLevel: 'warn', preview: { port: 0, host: '127.0.0.1' } })
const browser = await chromium.launch({ executablePath, args: ['--no-sandbox'] })
const page = await browser.newPage({ viewport: { width: 1440, height: 900 } })
await page.goto(server.resolvedUrls.local[0])
await page.getByRole('button', { name: 'Kiln ringdown' }).first().click()
await page.waitForTimeout(1500)
await page.screenshot({ path: 'public/screenshot.png' })
await browser.close()
await server.close()
