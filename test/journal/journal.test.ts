import { describe, expect, test } from 'vitest'
import { carriedOver } from '../../src/journal/carried-over'
import type { Edit } from '../../src/journal/edit'
import { Journal } from '../../src/journal/journal'
import { forgetOld, KEPT_MS, stateOf, takeState } from '../../src/journal/journal-state'
import type { CircuitId, LineId, StationId } from '../../src/plan/id'
import { addLine, removeLine } from '../../src/plan/line-edits'
import { EMPTY_PLAN, type Plan } from '../../src/plan/plan'
import { addStation, moveStation, removeStation, renameStation } from '../../src/plan/station-edits'
import { setTitle } from '../../src/plan/text-edits'

const S = (id: string) => id as StationId

const base = ['a', 'b', 'c'].reduce(
  (plan, id, at) => addStation(plan, { id: S(id), name: id.toUpperCase(), position: [10 + at / 100, 47] }),
  EMPTY_PLAN,
)
const line = (plan: Plan, from: string, to: string) =>
  addLine(plan, {
    ...{ id: `${from}${to}` as LineId, newCircuitId: `${from}${to}-net` as CircuitId, bends: [] },
    ...{ from: S(from), to: S(to), wire: 'wd-1a', lay: 'surface' },
  })

/** Two hands that begin with one plan; what each writes is given to the other by hand. */
const two = () => [new Journal('j', base), new Journal('j', base)] as const
const carried = (edits: readonly Edit[]) => JSON.parse(JSON.stringify(edits)) as Edit[]

describe('a journal', () => {
  test('writes an edit for each property that differs, and none for what does not', () => {
    const [own] = two()
    expect(own.write('m', base, base, 1)).toEqual([])
    const edits = own.write('m', base, renameStation(moveStation(base, S('a'), [11, 48]), S('b'), 'Ford'), 5)
    expect(edits).toEqual([
      { hand: 'm', number: 1, left: 1, at: 5, key: 'stations/a/position', value: [11, 48], over: [] },
      { hand: 'm', number: 2, at: 5, key: 'stations/b/name', value: 'Ford', over: [] },
    ])
    const again = own.write('m', own.mended().plan, renameStation(own.mended().plan, S('b'), 'Mill'), 5)
    expect(again[0]).toMatchObject({ over: ['m:2'], at: 6 })
  })
  test('shows what both set differently, the later first, until one of them is chosen', () => {
    const [own, other] = two()
    const mine = own.write('m', base, renameStation(base, S('a'), 'Camp'), 100)
    own.take(carried(other.write('t', base, renameStation(base, S('a'), 'Mill'), 200)))
    other.take(carried(mine))
    for (const journal of [own, other]) {
      expect(journal.mended().plan.stations.get(S('a'))?.name).toBe('Mill')
      expect(journal.torn().map(({ key, edits }) => [key, edits.map(({ value }) => value)])).toEqual([
        ['stations/a/name', ['Mill', 'Camp']],
      ])
    }
    other.take(carried(own.choose('m', 'stations/a/name', 'Camp', 50)))
    for (const journal of [own, other]) {
      expect(journal.torn()).toEqual([])
      expect(journal.mended().plan.stations.get(S('a'))?.name).toBe('Camp')
    }
  })
  test('keeps a station that one took out while another drew a line to it, and says so', () => {
    const [own, other] = two()
    own.write('m', base, removeStation(base, S('c')), 1)
    expect(own.mended().plan.stations.has(S('c'))).toBe(false)
    own.take(carried(other.write('t', base, line(base, 'b', 'c'), 1)))
    const { plan, mended } = own.mended()
    expect(plan.lines.get('bc' as LineId)?.to).toBe('c')
    expect(mended).toEqual(['C was taken out while a line was led to it; it stays.'])
  })
  test('keeps what one took out and another changed, and forgets what nobody else had touched', () => {
    const [own, other] = two()
    own.write('m', base, removeStation(removeStation(base, S('a')), S('b')), 1)
    own.take(carried(other.write('t', base, renameStation(base, S('a'), 'Camp'), 1)))
    const { plan, mended } = own.mended()
    expect([...plan.stations.keys()]).toEqual(['a', 'c'])
    expect(mended).toEqual(['Camp was taken out by one and changed by the other; it stays.'])
  })
  test('waits for what an edit builds on, whatever comes first, and takes nothing twice', () => {
    const [own, other] = two()
    const first = other.write('t', base, line(base, 'a', 'b'), 1)
    const drawn = other.mended().plan
    const second = other.write('t', drawn, setTitle(drawn, 'Both'), 1)
    expect(own.take(carried(second)).added).toEqual([])
    expect(own.take(carried([...first].reverse())).added).toHaveLength(first.length + 1)
    expect(own.take(carried([...first, ...second])).added).toEqual([])
    expect(own.mended().plan).toEqual(other.mended().plan)
  })
  test('refuses nonsense of another hand with a sentence, and goes on', () => {
    const [own] = two()
    const edit = { hand: 'x', number: 1, at: 5, over: [] }
    const nonsense = [
      { ...edit, key: 'stations/a/position', value: [999, 0] },
      { ...edit, key: 'lines/l/route', value: { bends: [], legs: [] } },
      { ...edit, key: 'plan//unknown-plan/version', value: [1, 99] },
      { ...edit, key: 'plan//wireTempC', value: 1e9 },
      { ...edit, key: 'nothing/a/b', value: 1 },
      { ...edit, key: 'field/f/record', value: { id: 'other', kind: 'laid', line: 'l', fromM: 0, toM: 1 } },
      { ...edit, key: 'features/f/feature', value: { type: 'Feature', properties: { kind: 'line' } } },
      { ...edit, key: 'stations/a/name', value: 'x', number: 0 },
      { ...edit, key: 'stations/a/name', value: 'x', at: 1e20 },
      { ...edit, hand: 'no:name', key: 'stations/a/name', value: 'x' },
      { ...edit, key: 'plan//' },
      { ...edit, key: 'stations/a/unknown', value: { properties: { kind: 'line' } } },
    ]
    for (const each of nonsense) {
      const { refused, added } = own.take([each as unknown as Edit])
      expect([each.key, refused.length, added.length]).toEqual([each.key, 1, 0])
      expect(refused[0]).toMatch(/^An edit .* left out\.$/)
    }
    expect(own.mended().plan).toEqual(base)
  })
  test('leaves out what names things that nobody knows, so that the plan still reads', () => {
    const [own] = two()
    const parts: readonly [string, unknown][] = [
      ['', 9],
      ['from', 'a'],
      ['to', 'nowhere'],
      ['wire', 'unheard-of'],
      ['pairs', 1],
      ['route', { bends: [], legs: [{ lay: 'surface' }] }],
      ['way', { return: 'pair' }],
    ]
    own.take(
      parts.map(([member, value], at) => ({
        ...{ hand: 'x', number: at + 1, at: 5, over: [] },
        ...{ key: `lines/l/${member}`, value },
      })),
    )
    const { plan, mended } = own.mended()
    expect(plan.lines.size).toBe(0)
    expect(mended).toEqual(['A line led to a station that nobody knows; it is left out.'])
  })
})

test('going back undoes what is one’s own, and leaves what others have done since', () => {
  const [own, other] = two()
  const drawn = line(base, 'a', 'b')
  const renamed = renameStation(drawn, S('c'), 'Camp')
  other.take(carried(own.write('m', base, drawn, 1)))
  other.take(carried(own.write('m', drawn, renamed, 2)))
  const seen = other.mended().plan
  const { changed } = own.take(
    carried(other.write('t', seen, setTitle(moveStation(seen, S('c'), [12, 48]), 'Theirs'), 3)),
  )
  const back = carriedOver(drawn, changed, own)
  expect(back.stations.get(S('c'))).toMatchObject({ name: 'C', position: [12, 48] })
  expect([back.title, back.lines.size]).toEqual(['Theirs', 1])
  const farther = carriedOver(base, changed, own)
  expect([farther.title, farther.lines.size]).toEqual(['Theirs', 0])
})

test('a line taken out by both is gone', () => {
  const drawn = line(base, 'a', 'b')
  const [own, other] = [new Journal('j', drawn), new Journal('j', drawn)]
  own.write('m', drawn, removeLine(drawn, 'ab' as LineId), 1)
  own.take(carried(other.write('t', drawn, removeLine(drawn, 'ab' as LineId), 2)))
  expect(own.mended()).toMatchObject({ mended: [] })
  expect(own.mended().plan.lines.size).toBe(0)
})

test('two records that two hands gave one id are two', () => {
  const drawn = line(base, 'a', 'b')
  const [own, other] = [new Journal('j', drawn), new Journal('j', drawn)]
  const laid = (toM: number): Plan => ({
    ...drawn,
    field: [{ id: 'f', kind: 'laid', line: 'ab' as LineId, fromM: 0, toM }],
  })
  const mine = own.write('m', drawn, laid(400), 1)
  own.take(carried(other.write('t', drawn, laid(700), 1)))
  other.take(carried(mine))
  for (const journal of [own, other])
    expect(journal.mended().plan.field?.map((each) => [each.id, 'toM' in each && each.toM])).toEqual([
      ['f', 700],
      ['f-m', 400],
    ])
})

test('what was taken out more than ninety days ago is forgotten, and what still names it is left out', () => {
  const [own, other] = two()
  const edits = own.write('m', base, removeStation(base, S('c')), 1000)
  const drawn = other.write('t', base, line(base, 'b', 'c'), 2000)
  forgetOld(own, 1000 + KEPT_MS)
  expect(own.things.ghosts().stations.has(S('c'))).toBe(true)
  forgetOld(own, 1001 + KEPT_MS)
  expect(own.things.ghosts().stations.has(S('c'))).toBe(false)
  own.take(carried(drawn))
  expect(own.mended().plan.lines.size).toBe(0)
  expect(own.mended().mended[0]).toBe('A line led to a station that nobody knows; it is left out.')
  // Whoever still knows the station brings it back.
  other.take(carried(edits))
  takeState(own, JSON.parse(JSON.stringify(stateOf(other))))
  expect(own.mended().plan.lines.size).toBe(1)
})
