import { expect, test } from 'vitest'
import { BUILT_IN } from '../../src/catalog/built-in'
import { keyOf } from '../../src/journal/keys'
import { KINDS } from '../../src/journal/things'
import type { LineId } from '../../src/plan/id'
import type { FieldRecord, Plan } from '../../src/plan/plan'
import { WORK } from '../../src/plan/work'
import { propertyValueWords } from '../../src/words/property-value-words'
import { propertyWords } from '../../src/words/property-words'
import { stepWords } from '../../src/words/step-words'
import { tongueOf } from '../../src/words/tongue'
import { demoPlan } from '../sheet/demo-source'

const demo = demoPlan()
const line = [...demo.lines.keys()][0] as LineId
const work = Object.fromEntries(Object.entries(WORK).map(([name, { usual }]) => [name, usual]))
const field: readonly FieldRecord[] = [
  { id: 'r1', kind: 'laid', line, fromM: 0, toM: 812, spool: 's1' },
  { id: 'r2', kind: 'undone', line, record: 'r1' },
]
/** A plan that says all that one can. */
const plan = {
  ...demo,
  ...{ work, field, loadingDistrict: 'heavy', papers: { revision: 'B', size: 'A4', kinds: ['line'] } },
  allowances: { ...demo.allowances, spliceOhms: 0.1, spliceMicroS: 2, coil: { voiceDb: 0.5, ringDb: 1 } },
  catalog: {
    wires: [...BUILT_IN.wires].slice(0, 40),
    sets: [...BUILT_IN.sets],
    supplies: [...BUILT_IN.supplies],
  },
} as unknown as Plan

const registers = Object.entries(KINDS).flatMap(([kind, { list, spread }]) =>
  [...list(plan)].flatMap(([id, thing]) =>
    [...spread(thing as never, new Map())].map(
      ([member, value]) =>
        [
          keyOf(kind, id, member),
          Array.isArray(value) && /^(sets|lines)\//.test(member) ? value[1] : value,
        ] as const,
    ),
  ),
)

test('every property has a name in plain words, and every value one without a sign of how it is stored', () => {
  expect(registers.length).toBeGreaterThan(1000)
  const metric = tongueOf(plan, 'metric')
  const odd = registers.flatMap(([key, value]) => {
    const [name, said] = [propertyWords(plan, key), propertyValueWords(plan, key, value, metric)]
    const isSource = /\/(source|sources|spread|note)$/.test(key)
    return /[a-z][A-Z]|\/|^the of /.test(name.replace('kHz', '').split(' of ')[0]!) ||
      (!isSource && !key.includes('unknown-') && /[{}"[\]]|undefined|NaN/.test(said)) ||
      said === ''
      ? [`${key}: ${name} = ${said}`]
      : []
  })
  expect(odd).toEqual([])
})

test('who reads US units reads no metric figure of what was set differently', () => {
  const us = tongueOf(plan, 'us')
  const metric = registers.flatMap(([key, value]) => {
    const isWritten = /\/(source|sources|spread|note|name)$/.test(key)
    const said = propertyValueWords(plan, key, value, us)
    return !isWritten && /\d (m|km|cm|mm|kg|N|°C|km\/h|\S+\/km)\b(?!\/mi)/.test(said)
      ? [`${key}: ${said}`]
      : []
  })
  expect(metric).toEqual([])
})

test('a figure has its unit where the name of what it is in has it', () => {
  const said = propertyValueWords(
    plan,
    keyOf('plan', '', 'allowances/slackPct/surface'),
    22,
    tongueOf(plan, 'us'),
  )
  expect(said).toBe('22 %')
})

test('a step tells what was added, taken out and changed, and names what is gone', () => {
  const mark = keyOf('lines', line, '')
  const keys = [mark, keyOf('lines', line, 'wire')]
  expect(stepWords(plan, { keys, made: [mark], gone: [] })).toMatch(/^added .* – /)
  expect(stepWords(plan, { keys: [mark], made: [], gone: [mark] })).toMatch(/^took out .* – /)
  expect(stepWords(plan, { keys: [mark], made: [], gone: [] })).toBe('changed the order of a list')
  const others = [keyOf('lines', line, 'wire'), keyOf('plan', '', 'weather')]
  expect(stepWords(plan, { keys: others, made: [], gone: [] })).toMatch(
    /^changed the wire of .* and the weather$/,
  )
})
