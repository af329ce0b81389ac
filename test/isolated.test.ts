import bidiFactory from 'bidi-js'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { isolated, undirected } from '../src/isolated'
import type { LineId, StationId } from '../src/plan/id'
import { EMPTY_PLAN, type Line, type Plan, plainLineName } from '../src/plan/plan'
import { cautionText } from '../src/words/caution-words'
import { lackSentence } from '../src/words/circuit-notes'
import { tongueOf } from '../src/words/tongue'

/** The Unicode Bidirectional Algorithm (UAX 9) by another hand. */
const bidi = bidiFactory()
const shownOrder = (text: string) => bidi.getReorderedString(text, bidi.getEmbeddingLevels(text, 'ltr'))
const INVISIBLE = /[\u2066-\u2069\u200e\u200f\u061c]/g

const ARABIC = 'برج الماء 3'
const HEBREW = 'תחנה 14'
const OVERRIDE = 'Ford \u202e9.36'
const names = () =>
  fc.oneof(
    fc.constantFrom(ARABIC, HEBREW, OVERRIDE, 'Ford', '\u2067x', '\u2069\u2069ב', 'ב\n14', 'א (7)', '12 א'),
    fc.string({
      unit: fc.constantFrom(...'abאבعج14 .,()-:\u202e\u202b\u2066\u2067\u2068\u2069\u202c\n'),
      maxLength: 12,
    }),
  )

function planOf(from: string, to: string): Plan {
  const station = (id: string, name: string, lon: number) =>
    [id as StationId, { id: id as StationId, name, note: '', position: [lon, 50] as const }] as const
  const line: Line = {
    ...{ id: 'l1' as LineId, from: 's1' as StationId, to: 's2' as StationId, bends: [] },
    ...{ legs: [{ lay: 'surface' }], wire: 'x', pairs: 1, return: 'pair' },
  }
  return {
    ...EMPTY_PLAN,
    stations: new Map([station('s1', from, 10), station('s2', to, 10.01)]),
    lines: new Map([[line.id, line]]),
  }
}

/** Brackets are left out, for they are mirrored. */
const lettersOf = (text: string) => [...text.replace(INVISIBLE, '').replace(/[()]/g, '')].sort().join('')

/** What stands round the names, as it is shown: the names taken out, which are marked so that none is missed. */
function around(text: string, parts: readonly string[]): string {
  const order = shownOrder(text).replace(INVISIBLE, '')
  return parts.reduce((left, part) => {
    const shown = shownOrder(part).replace(INVISIBLE, '')
    expect(left).toContain(shown)
    return shown === '' ? left : left.replace(shown, '•')
  }, order)
}

test('a name from right to left leaves the figures and words around it where they are', () => {
  fc.assert(
    fc.property(names(), names(), (a, b) => {
      const [from, to] = [isolated(a), isolated(b)]
      fc.pre(undirected(a).trim() !== '' && undirected(b).trim() !== '')
      const text = `1: ${from}, 763 m out → ${to} (63.9 V).`
      const sentence = shownOrder(text).replace(INVISIBLE, '')
      expect(sentence.startsWith('1: ')).toBe(true)
      expect(sentence.endsWith(' (63.9 V).')).toBe(true)
      const [first = '', second = ''] = sentence.slice(3, -' (63.9 V).'.length).split(', 763 m out → ')
      expect([lettersOf(first), lettersOf(second)]).toEqual([lettersOf(from), lettersOf(to)])
    }),
  )
})

test('without isolation the same sentence is turned round, so the check above can fail', () => {
  expect(shownOrder(`${ARABIC}, 763 m`)).not.toContain(', 763 m')
  expect(shownOrder(`${OVERRIDE} 63.9 V`)).toContain('9.36')
})

test('sentences of the program keep their order over names of any script', () => {
  const plan = planOf(ARABIC, HEBREW)
  const say = tongueOf(plan, 'metric')
  const beside = cautionText({ code: 'ringing-shock', where: 'l1', volts: 84 } as never, say)
  expect(around(beside, [isolated(ARABIC), isolated(HEBREW)])).toMatch(/^• – •: ringing puts up to 84 V/)
  const lack = lackSentence({ code: 'no-call', a: 's1', b: 's2' } as never, say)
  expect(around(lack, [isolated(ARABIC), isolated(HEBREW)])).toMatch(/^• and • have no way/)
})

test('a name of other letters stays as it was typed, and a file holds every name as it was given', () => {
  for (const plain of ['Ford', 'Żubr 3 (upper)', '高地 4', 'Ω-2']) expect(isolated(plain)).toBe(plain)
  expect(isolated(OVERRIDE)).toBe('Ford 9.36')
  const plan = planOf(ARABIC, OVERRIDE)
  expect(plainLineName(plan, plan.lines.get('l1' as LineId)!)).toBe(`${ARABIC} – ${OVERRIDE}`)
})
