import type { Page } from 'playwright-core'
import { afterEach, expect, test } from 'vitest'
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

const LOOKS = [
  ['at night', DESK, { theme: 'night' }],
  ['in forced colours, on a phone', PHONE, { forcedColors: 'active' }],
  ['in letters of twice the size, on a phone', PHONE, { fontPx: 32 }],
] as const

test.each(LOOKS)('%s nothing is amiss in whatever lies open', async (_, viewport, look) => {
  const isPhone = viewport === PHONE
  at = await visit({ viewport, touch: isPhone })
  const { page, context } = at
  if ('forcedColors' in look) await page.emulateMedia({ forcedColors: look.forcedColors })
  if ('fontPx' in look) {
    const browser = await context.newCDPSession(page)
    await browser.send('Page.setFontSizes', { fontSizes: { standard: look.fontPx, fixed: look.fontPx } })
  }
  if ('theme' in look)
    await page.evaluate((theme) => localStorage.setItem('fieldpair-theme', theme), look.theme)
  await page.reload()
  await page.locator('.circuits button').first().waitFor()
  await page.locator('.map-aids').waitFor()
  for (const [name, open, leave] of STATES) {
    await open()
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)
    const missed = isPhone ? await tooSmall(page) : []
    expect([name, wide, missed, await complaintsOf(page)]).toEqual([name, 0, [], []])
    await leave()
  }
  expect(at.faults).toEqual([])
})
