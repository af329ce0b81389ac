import { expect, test } from 'vitest'
import { breakIntoSheets } from '../../src/sheet/layout/break-sheets'
import { bodyOf, PAPER_SIZES } from '../../src/sheet/layout/paper-size'
import { roomUnderHead } from '../../src/sheet/layout/sheet-head'
import { PAPER_KINDS } from '../../src/sheet/paper-kinds'
import { FIRST_PAPERS } from '../../src/sheet/paper-names'
import { withPrintableNames } from '../../src/sheet/printable-names'
import { demoPlan, sourceOf } from './demo-source'

const demoWith = (name: string) => {
  const plan = demoPlan()
  const named = <K, T extends { readonly name: string }>(things: ReadonlyMap<K, T>) =>
    new Map([...things].map(([id, thing]) => [id, { ...thing, name }]))
  const { stations, circuits, hazards } = plan
  return sourceOf({
    ...plan,
    title: name,
    stations: named(stations),
    circuits: named(circuits),
    hazards: named(hazards),
  })
}

/** The widest letter: no other takes more lines of a head. */
const longName = (letters: number) => 'W'.repeat(letters)

test('names of 400 letters, not cut, leave a line card with maps that end', () => {
  const source = demoWith(longName(400))
  const room = roomUnderHead(bodyOf(PAPER_SIZES[0]!), 'Line cards', source.plan.title)
  const cards = PAPER_KINDS['Line cards'](source, room)
  expect(cards.length).toBe(source.plan.lines.size)
})

/** Letters that the papers chosen at first are laid out of: what they cost grows with these. */
const lettersOf = (name: string) => {
  const source = withPrintableNames(demoWith(name))
  const room = bodyOf(PAPER_SIZES[0]!)
  return FIRST_PAPERS.reduce(
    (sum, kind) => sum + JSON.stringify(PAPER_KINDS[kind](source, room).map(({ blocks }) => blocks)).length,
    0,
  )
}

test('names of 10,000 letters make papers of no more letters than names of 120, and open as soon', () => {
  const [short, long] = [120, 10_000].map((letters) => lettersOf(longName(letters)))
  expect(long! / short!).toBeLessThan(1.02)
})

test('a name is cut between letters, not within one', () => {
  const { plan } = withPrintableNames(demoWith(`${'W'.repeat(119)}\u{1f6f0}${'W'.repeat(200)}`))
  expect(encodeURIComponent(plan.title)).toMatch(/%F0%9F%9B%B0%E2%80%A6$|W%E2%80%A6$/)
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
