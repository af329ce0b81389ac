import type { Page } from 'playwright-core'
import { afterEach, expect, test } from 'vitest'
import { todays } from '../cases'
import { complaintsOf } from './axe'
import { papersMade, type Visit, visit } from './visit'

/** All that can lie open, one after the other, as those see it who need it otherwise: what axe finds, what a finger misses, what the side cuts off. */
const DESK = { width: 1440, height: 900 }
const PHONE = { width: 360, height: 640 }
/** The least target that WCAG 2.2 asks for at level AAA (2.5.5), and half a pixel for rounding. */
const LEAST_TARGET_PX = 43.5

let at: Visit
afterEach(() => at?.close())

const button = (name: string) => at.page.getByRole('button', { name, exact: true })
const pressEscape = () => at.page.keyboard.press('Escape')

/** Each state: how it is come to, and how it is left. */
const STATES: readonly (readonly [
  name: string,
  open: () => Promise<unknown>,
  leave: () => Promise<unknown>,
])[] = [
  ['the plan', async () => undefined, async () => undefined],
  [
    'a circuit',
    async () => {
      await at.page.locator('.circuits button').first().click()
      await at.page.getByRole('heading', { name: 'Will it ring?' }).waitFor()
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
    },
    () => button('Close').click(),
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

/** Letters of the size that the browser's own settings ask for: no zoom. */
async function writeLarge(page: Page) {
  const browser = await page.context().newCDPSession(page)
  await browser.send('Page.setFontSizes', { fontSizes: { standard: 32, fixed: 32 } })
}

/** Whose page it is, and how it looks in turn: each group of looks is tried on a state while it lies open. */
const DESKS = [
  ['a desk, in light, dark and red', DESK, async () => {}, ['light', 'dark', 'night'].map(look)],
] as const
const PHONES = [
  [
    'a phone, in forced colours',
    PHONE,
    (page: Page) => page.emulateMedia({ forcedColors: 'active' }),
    [async () => {}],
  ],
  ['a phone, in letters of twice the size', PHONE, writeLarge, [async () => {}]],
] as const

test.each([...DESKS, ...todays(PHONES, 2)])(
  'on %s, nothing is amiss in whatever lies open',
  { timeout: 180_000 },
  async (_, viewport, prepare, looks) => {
    const isPhone = viewport === PHONE
    at = await visit({ viewport, touch: isPhone })
    const { page } = at
    await prepare(page)
    await page.reload()
    await page.locator('.circuits button').first().waitFor()
    await page.locator('.map-aids').waitFor()
    for (const [name, open, leave] of STATES) {
      await open()
      for (const [index, put] of looks.entries()) {
        await put(page)
        const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)
        const missed = isPhone ? await tooSmall(page) : []
        // In another look only its colours are other.
        const complaints = await complaintsOf(page, index === 0 ? undefined : ['color-contrast'])
        expect([name, index, wide, missed, complaints]).toEqual([name, index, 0, [], []])
      }
      await leave()
    }
    expect(at.faults).toEqual([])
  },
)
