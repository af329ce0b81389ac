import type { Page } from 'playwright-core'
import { afterEach, expect, test } from 'vitest'
import { todays } from '../cases'
import { complaintsOf } from './axe'
import { openAll, papersMade, type Visit, visit } from './visit'

/** All that can lie open, one after the other, as those see it who need it otherwise: what axe finds, what a finger misses, what the side cuts off. */
const DESK = { width: 1440, height: 900 }
const PHONE = { width: 360, height: 640 }
/** The least target that WCAG 2.2 asks for at level AAA (2.5.5), and half a pixel for rounding. */
const LEAST_TARGET_PX = 43.5

/** As browsers come. */
const LETTERS = '16px'

let at: Visit
afterEach(() => at?.close())

const button = (name: string) => at.page.getByRole('button', { name, exact: true })
const pressEscape = () => at.page.keyboard.press('Escape')

/** What of the table is seen through the papers, which lie over it. */
const seenThrough = () =>
  at.page.evaluate(() => {
    const papers = document.querySelector('.papers')!
    // What is inert is passed over when one asks what lies on top, though it is seen.
    const inert = [...document.querySelectorAll<HTMLElement>('[inert]')]
    for (const each of inert) each.inert = false
    const seen: string[] = []
    for (let x = 20; x < innerWidth; x += 50)
      for (let y = 20; y < innerHeight; y += 50) {
        const top = document.elementsFromPoint(x, y)[0]
        if (top && !papers.contains(top)) seen.push(`${top.tagName} ${top.className}`)
      }
    for (const each of inert) each.inert = true
    return seen
  })

/** Each state: how it is come to, and how it is left. */
const STATES: readonly (readonly [
  name: string,
  open: () => Promise<unknown>,
  leave: () => Promise<unknown>,
])[] = [
  ['the plan', async () => undefined, async () => undefined],
  [
    'a circuit with all its studies, and a fault found',
    async () => {
      const { page } = at
      await page.locator('.circuits button', { hasText: 'Kiln ringdown' }).click()
      await page.getByText('Where is the fault?').waitFor()
      await openAll(page, '.card')
      await page.getByText('(yours now)').first().waitFor()
      await page.getByRole('img', { name: /^Battery volts/ }).waitFor()
      await button('Add what is known').click()
      await page.getByLabel('Ohms read, Ω').fill('80')
      await page.keyboard.press('Tab')
      await page.getByText('The map shows it').waitFor()
      expect(await page.locator('.fault').evaluate((mark) => mark.checkVisibility())).toBe(true)
      const [wide, letters] = await page
        .locator('.panel')
        .evaluate((panel) => [
          panel.scrollWidth - panel.clientWidth,
          getComputedStyle(document.documentElement).fontSize,
        ])
      // Of tables WCAG 2.2 asks for no less (1.4.10): in large letters they may be moved sideways.
      if (letters === LETTERS) expect(wide).toBe(0)
    },
    () => at.page.getByRole('button', { name: /The whole plan/ }).click(),
  ],
  ['plans', () => button('Plans').click(), pressEscape],
  ['view', () => button('View').click(), pressEscape],
  ['help', () => button('Help and keys').click(), () => button('Close').click()],
  [
    'legend',
    async () => {
      await button('Legend').click()
      await at.page.locator('.legend').waitFor()
    },
    pressEscape,
  ],
  [
    'going to a place',
    async () => {
      await button('Go to').click()
      await at.page.locator('dialog.ask').waitFor()
    },
    () => button('Stay here').click(),
  ],
  [
    'a line half drawn',
    async () => {
      await button('Go to').click()
      // Open ground: over the demo a line may end on what lies there.
      await at.page.locator('dialog.ask input').fill('48.2 N 66.2 E')
      await at.page.keyboard.press('Enter')
      await at.page.locator('dialog.ask').waitFor({ state: 'hidden' })
      await button('Line').click()
      // By keys, for on a small map buttons lie over much of it.
      await at.page.locator('.map-canvas').focus()
      for (const key of ['ArrowUp', ' ', 'Shift+ArrowUp', ' ']) await at.page.keyboard.press(key)
      await button('Done').waitFor()
    },
    () => button('Put aside').click(),
  ],
  [
    'a station',
    async () => {
      await button('Select').click()
      await at.page.getByPlaceholder('Station, line or circuit').fill('Cairn')
      await at.page.locator('.panel .rows button', { hasText: 'Cairn' }).first().click()
      await at.page.locator('.panel').getByLabel('Place', { exact: true }).waitFor()
    },
    () => at.page.getByRole('button', { name: /The whole plan/ }).click(),
  ],
  [
    'papers',
    async () => {
      await button('Papers').click()
      await papersMade(at.page)
      expect(await seenThrough()).toEqual([])
      // Every kind of paper, though not a sheet for every line.
      await at.page.locator('label', { hasText: /^For/ }).locator('select').selectOption('Stores line')
      await papersMade(at.page)
    },
    async () => {
      await pressEscape()
      await expect.poll(() => at.page.locator('.papers').count()).toBe(0)
      await expect.poll(() => at.page.evaluate(() => document.activeElement?.textContent)).toBe('Papers')
    },
  ],
]

/** Controls that a finger would miss; a box to tick is as large as its label. */
const tooSmall = (page: Page) =>
  page.evaluate((least) => {
    const sizeOf = (element: Element) => {
      const labels = element instanceof HTMLInputElement ? [...(element.labels ?? [])] : []
      const boxes = [element, ...labels].map((each) => each.getBoundingClientRect())
      return [
        Math.max(...boxes.map(({ width }) => width)),
        Math.max(...boxes.map(({ height }) => height)),
      ] as const
    }
    return [...document.querySelectorAll('button, a, select, input, summary, textarea')]
      .filter((each) => each.checkVisibility() && !each.closest('[inert]') && each.id !== 'skip')
      .filter((each) => sizeOf(each).some((px) => px > 0 && px < least))
      .map((each) => `${each.textContent || each.getAttribute('aria-label')}: ${sizeOf(each).join(' × ')}`)
  }, LEAST_TARGET_PX)

const look = (theme: string) => (page: Page) =>
  page.evaluate((theme) => {
    document.documentElement.dataset.theme = theme
  }, theme)
const DARK = ['dark', 'night'].map(look)

/** Letters of the size that the browser's own settings ask for: no zoom. */
async function writeLarge(page: Page) {
  const browser = await page.context().newCDPSession(page)
  await browser.send('Page.setFontSizes', { fontSizes: { standard: 32, fixed: 32 } })
}

async function begin(viewport: typeof DESK, prepare: (page: Page) => Promise<unknown>) {
  const isPhone = viewport === PHONE
  at = await visit({ viewport, touch: isPhone, prepare: (context) => prepare(context.pages()[0]!) })
  await at.page.locator('.circuits button').first().waitFor()
  await at.page.locator('.map-aids').waitFor()
}
/** How far a page is wider than its screen, px. */
const tooWide = () => at.page.evaluate(() => document.documentElement.scrollWidth - innerWidth)

test('on a desk, in light, dark and red, nothing is amiss in whatever lies open', {
  timeout: 180_000,
}, async () => {
  await begin(DESK, async () => undefined)
  const { page } = at
  for (const [index, [name, open, leave]] of STATES.entries()) {
    await open()
    expect([name, await tooWide(), await complaintsOf(page)]).toEqual([name, 0, []])
    // In another look only its colours are other: of two that are dark each state is seen in one a day.
    for (const put of todays(index % 2 ? DARK : DARK.toReversed(), 2)) {
      await put(page)
      expect([name, await complaintsOf(page, ['color-contrast'])]).toEqual([name, []])
    }
    await look('light')(page)
    await leave()
  }
  expect(at.faults).toEqual([])
})

const PHONES = [
  ['in forced colours', (page: Page) => page.emulateMedia({ forcedColors: 'active' }), LETTERS],
  ['in letters of twice the size', writeLarge, '32px'],
] as const
/** What axe says of a phone it says for the most part of a desk as well: of a third of the states a day. */
const READ = todays(STATES, 3)

test.each(todays(PHONES, 2))(
  'on a phone, %s, nothing is amiss in whatever lies open',
  { timeout: 180_000 },
  async (_, prepare, letters) => {
    await begin(PHONE, prepare)
    const { page } = at
    expect(await page.evaluate(() => getComputedStyle(document.documentElement).fontSize)).toBe(letters)
    for (const state of STATES) {
      const [name, open, leave] = state
      await open()
      const complaints = READ.includes(state) ? await complaintsOf(page) : []
      expect([name, await tooWide(), await tooSmall(page), complaints]).toEqual([name, 0, [], []])
      await leave()
    }
    expect(at.faults).toEqual([])
  },
)
