// @vitest-environment page
import { act } from 'preact/test-utils'
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest'
import { PAPER_JOBS } from '../../src/sheet/paper-jobs'
import { PAPER_NAMES } from '../../src/sheet/paper-names'
import { Papers } from '../../src/sheet/papers'
import type { SaveTable } from '../../src/sheet/table-picker'
import { createStore } from '../../src/state/store'
import { workersHere } from '../jobs/worker-here'
import { page } from '../panel/page'
import { demoPlan } from './demo-source'

const saved: Parameters<SaveTable>[] = []
let on: ReturnType<typeof page>
let closed = 0

const allMade = () => vi.waitFor(() => expect(button('Print').disabled).toBe(false), { timeout: 20_000 })

/** One page for all tests: what each chooses it lets go of. */
beforeAll(async () => {
  const { start } = workersHere(PAPER_JOBS)
  vi.stubGlobal('Worker', function Worker() {
    return start()
  })
  on = page(
    <Papers
      store={createStore(demoPlan())}
      onClose={() => {
        closed += 1
      }}
      onSaveTable={(...table) => saved.push(table)}
    />,
  )
  on.press('All papers')
  await allMade()
}, 30_000)
afterAll(() => void vi.unstubAllGlobals())

const sheets = () => [...on.root.querySelectorAll('.sheet')]
/** Sheets with a head and a foot: what is cut has neither. */
const headed = () => sheets().filter((sheet) => !sheet.classList.contains('bare'))
const titleOf = (sheet: Element) =>
  sheet.querySelector('h1')?.textContent ?? sheet.getAttribute('aria-label')!.split(',')[0]
const titles = () => [...new Set(sheets().map(titleOf))]
const button = (name: string) => {
  const found = [...on.root.querySelectorAll('button')].find((each) => each.textContent === name)
  if (!found) throw new Error(`no button is called "${name}"`)
  return found
}
/** Sets a field that stands in its label, as a hand does. */
async function set(name: string, choice: (field: HTMLSelectElement) => string) {
  const label = [...on.root.querySelectorAll('label')].find((each) => each.textContent?.startsWith(name))
  const field = label?.querySelector<HTMLSelectElement>('input, select')
  if (!field) throw new Error(`nothing is labelled "${name}"`)
  field.value = choice(field)
  act(() => {
    field.dispatchEvent(new Event('change', { bubbles: true }))
  })
  await allMade()
}
const press = (name: string) => act(() => on.control(name).click())
const reads = (sheet: Element | undefined) => sheet?.textContent ?? ''

/** Leaves that paper alone, besides those of which the plan has nothing. */
function onlyTicked(wanted: string) {
  for (const name of PAPER_NAMES)
    if (!['How far', 'Ways of a line'].includes(name) && on.control(name).checked !== (name === wanted))
      press(name)
}

describe('the papers', () => {
  test('bear plan, date, datum, north, units, caution and their count on every sheet', () => {
    for (const sheet of sheets()) {
      expect(reads(sheet)).toContain('Ravel Moor survey camp')
      expect(reads(sheet)).toMatch(/\d{4}-\d\d-\d\d/)
      expect(reads(sheet)).toMatch(/plan\s\w{4}-\w{4}/)
      // The plan's own, or one that opens the line of its card.
      expect(sheet.querySelector('.picture path, .own-code path')).not.toBeNull()
    }
    for (const sheet of headed()) {
      const text = reads(sheet)
      expect(text).toContain('Datum WGS 84, true north up, m and km')
      expect(text).toMatch(/sheet \d+ of \d+/)
      expect(text).toContain('Nobody cranks')
    }
  })

  test('count the sheets of each paper by themselves', () => {
    const counts = sheets().map((sheet) => {
      const [, number, of] = /sheet (\d+) of (\d+)/.exec(sheet.getAttribute('aria-label')!)!
      return [Number(number), Number(of)] as const
    })
    for (const [i, [number, of]] of counts.entries()) {
      expect(number).toBeLessThanOrEqual(of)
      if (number > 1) expect(counts[i - 1]).toEqual([number - 1, of])
    }
  })

  test('are not drawn anew by a letter of the revision; only the line that bears it is', () => {
    const before = sheets()
    const body = before[0]!.querySelector('.body')!.firstElementChild
    const field = on.root.querySelector<HTMLInputElement>('.revision')!
    field.value = '2b'
    act(() => void field.dispatchEvent(new Event('input', { bubbles: true })))
    for (const sheet of sheets()) expect(reads(sheet)).toContain('revision 2b')
    expect(sheets()).toEqual(before)
    expect(sheets()[0]!.querySelector('.body')!.firstElementChild).toBe(body)
  })

  test('hand over the table that is picked, with its numbers as numbers', async () => {
    await set('Save tables', (field) =>
      String([...field.options].findIndex((option) => option.textContent === 'Lines in the order of laying')),
    )
    act(() => button('Save CSV').click())
    const [name, table] = saved[0]!
    expect(name).toBe('Lines in the order of laying')
    expect(table.rows).toHaveLength(11)
    expect(table.rows[0]).toContainEqual(expect.any(Number))
  })

  test('go as they are unticked', async () => {
    // A traffic diagram is for two boards at least; how far it goes, and ways of a line, are printed where the map shows them; cards of three kinds share sheets.
    expect(titles()).toHaveLength(PAPER_NAMES.length - 5)
    press('Fault card')
    expect(titles()).not.toContain('Fault card')
    expect(titles()).toHaveLength(PAPER_NAMES.length - 6)
    press('Fault card')
    await allMade()
  })

  test('bear the name of plan and papers as the name of a file', () => {
    expect(document.title).toBe('Ravel Moor survey camp – Papers')
    onlyTicked('Fault card')
    expect(document.title).toBe('Ravel Moor survey camp – Fault card')
  })

  test('come on Letter as well', async () => {
    await set('Sheet size', () => 'Letter')
    expect(on.root.querySelector('.papers')?.getAttribute('data-size')).toBe('Letter')
  })

  test('of one line hold that line alone', async () => {
    onlyTicked('Line cards')
    await set('For', (field) => [...field.options].find(({ text }) => text.startsWith('Line 2'))!.value)
    const cards = sheets().filter((sheet) => sheet.querySelector('h1')?.textContent === 'Line card')
    expect(cards.length).toBeGreaterThan(0)
    for (const card of cards) expect(reads(card)).toContain('Line 2:')
  })

  test('tell magnetic north for the date that is asked, and true bearings where no model reaches', async () => {
    await set('Date', () => '2026-11-25')
    expect(reads(on.root)).toContain('WMM2025, 2026-11-25')
    expect(reads(on.root)).toContain('Bearings are magnetic.')
    await set('Date', () => '2050-01-01')
    expect(reads(on.root)).toContain('No magnetic model here covers 2050-01-01')
    expect(reads(on.root)).toContain('Bearings are true.')
  })

  test('close by their button and by Escape', () => {
    act(() => button('Close').click())
    act(() => {
      on.root
        .querySelector('.papers')
        ?.dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape', bubbles: true }))
    })
    expect(closed).toBe(2)
  })

  test('that cannot be made say why, and are made again when asked', async () => {
    let isBroken = true
    const { start } = workersHere({
      papers: (...asked) => {
        if (isBroken) throw new Error('no room for a name')
        PAPER_JOBS.papers(...(asked as Parameters<typeof PAPER_JOBS.papers>))
      },
    })
    vi.stubGlobal('Worker', function Worker() {
      return start()
    })
    on = page(
      <Papers store={createStore(demoPlan())} onClose={() => undefined} onSaveTable={() => undefined} />,
    )
    await vi.waitFor(() =>
      expect(on.text()).toContain('Making the papers stopped unexpectedly (no room for a name).'),
    )
    expect(button('Print').disabled).toBe(true)
    isBroken = false
    on.press('Make them again')
    await allMade()
    expect(on.text()).not.toContain('stopped unexpectedly')
  })
})
