import puppeteer from 'puppeteer-core'

/** @typedef {import('./walk.mjs').Hand} Hand */

/**
 * Firefox over WebDriver BiDi.
 *
 * @param {string} executablePath
 * @returns {Promise<Hand>}
 */
export async function firefoxHand(executablePath) {
  const browser = await puppeteer.launch({ browser: 'firefox', executablePath, headless: true })
  const page = await browser.newPage()
  await page.setViewport({ width: 1440, height: 900 })
  /** @type {string[]} */
  const faults = []
  page.on('pageerror', (error) => faults.push(String(error)))
  return {
    go: async (url) => void (await page.goto(url)),
    run: (act, ...args) => page.evaluate(act, ...args),
    move: (x, y) => page.mouse.move(x, y, { steps: 3 }),
    press: () => page.mouse.down(),
    release: () => page.mouse.up(),
    replace: async (text) => {
      await page.keyboard.down('Control')
      await page.keyboard.press('a')
      await page.keyboard.up('Control')
      await page.keyboard.type(text)
      await page.keyboard.press('Enter')
    },
    print: async () => Buffer.from(await page.pdf({ format: 'A4', printBackground: true })),
    picture: async () => Buffer.from(await page.screenshot()),
    faults: () => faults,
    close: () => browser.close(),
  }
}
