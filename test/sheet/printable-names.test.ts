import { expect, test } from 'vitest'
import { breakIntoSheets } from '../../src/sheet/layout/break-sheets'
import { bodyOf, PAPER_SIZES } from '../../src/sheet/layout/paper-size'
import { roomUnderHead } from '../../src/sheet/layout/sheet-head'
import { PAPER_KINDS } from '../../src/sheet/paper-kinds'
import { withPrintableNames } from '../../src/sheet/printable-names'
import { demoPlan, sourceOf } from './demo-source'

const demoWith = (name: string) => {
  const plan = demoPlan()
  const stations = new Map([...plan.stations].map(([id, station]) => [id, { ...station, name }]))
  return sourceOf({ ...plan, title: name, stations })
}

/** The widest letter: no other takes more lines of a head. */
const longName = (letters: number) => 'W'.repeat(letters)

test('names of 400 letters, not cut, leave a line card with maps that end', () => {
  const source = demoWith(longName(400))
  const room = roomUnderHead(bodyOf(PAPER_SIZES[0]!), 'Line cards', source.plan.title)
  const cards = PAPER_KINDS['Line cards'](source, room)
  expect(cards.length).toBe(source.plan.lines.size)
})

test('where every name has 10,000 letters, every sheet has room left under its head', () => {
  const source = withPrintableNames(demoWith(longName(10_000)))
  for (const [kind, make] of Object.entries(PAPER_KINDS)) {
    const room = roomUnderHead(bodyOf(PAPER_SIZES[0]!), kind, source.plan.title)
    for (const { about, blocks } of make(source, room)) {
      const under = roomUnderHead(room, about, '')
      // With the head of names above them, what is about a line must still find most of a sheet.
      expect(under.heightMm, `${kind}: ${about.slice(0, 20)}`).toBeGreaterThan(room.page.heightMm / 2.5)
      // A paper that has nothing to say of this plan takes no sheet.
      if (blocks.length > 0) expect(breakIntoSheets(blocks, under).length, kind).toBeGreaterThan(0)
    }
  }
})
