import fc from 'fast-check'
import { expect, test } from 'vitest'
import { formatPlan } from '../../src/files/format-plan'
import { parsePlan } from '../../src/files/parse-plan'
import type { CircuitId, StationId } from '../../src/plan/id'
import { ALL, cases } from '../cases'
import { cpuSeconds } from '../cpu-seconds'
import { planOf, QUARRY_TEXT } from './quarry-net'

const problemsOf = (text: string) => {
  const result = parsePlan(text)
  if (result.ok) throw new Error('the file was taken for sound')
  return result.problems
}

const fileWith = (features: readonly unknown[], plan: object = {}) =>
  JSON.stringify({
    type: 'FeatureCollection',
    plan: { format: 'fieldpair-plan', version: 1, ...plan },
    features,
  })

const station = (id: string, lonDeg: number) => ({
  type: 'Feature',
  id,
  properties: { kind: 'station', name: id },
  geometry: { type: 'Point', coordinates: [lonDeg, 10] },
})

const line = (id: string, from: string, to: string, coordinates: unknown) => ({
  type: 'Feature',
  id,
  properties: { kind: 'line', from, to, wire: 'wd-1a', legs: [{ lay: 'surface' }] },
  geometry: { type: 'LineString', coordinates },
})

/** With room for a slow machine. */
const within = (seconds: number, work: () => void) => expect(cpuSeconds(work)).toBeLessThan(seconds)

test('a text of 100 MB is refused before it is read', () => {
  const text = ' '.repeat(100_000_000)
  within(0.5, () => expect(problemsOf(text)).toMatchObject([{ code: 'too-long', at: 'file' }]))
})

test.each(['[', '{"a":'])('100,000 nested “%s” are a fault, not a crash', (open) => {
  within(2, () => expect(problemsOf(open.repeat(100_000))).toMatchObject([{ code: 'too-deep' }]))
  const inPlan = QUARRY_TEXT.replace('"gravel"', `${'['.repeat(100_000)}${']'.repeat(100_000)}`)
  within(2, () => expect(problemsOf(inPlan)).toMatchObject([{ code: 'too-deep' }]))
})

test('one string of 40 million characters that never ends is a fault, not a crash', () => {
  within(10, () => expect(problemsOf(`["${'a'.repeat(40_000_000)}`)).toMatchObject([{ code: 'not-json' }]))
})

const FAULTY = ALL ? 100_000 : 30_000

test(`${FAULTY} faulty features are told in 200 lines and a count, in good time`, () => {
  const features = Array.from({ length: FAULTY }, (_, index) => line(`l${index}`, 'a', 'a', 'nowhere'))
  within(5, () => {
    const problems = problemsOf(fileWith(features))
    expect(problems).toHaveLength(201)
    expect(problems.at(-1)).toMatchObject({ code: 'more-faults', at: 'file' })
    expect(problems.at(-1)!.message).toMatch(/more faults than these 200/)
  })
})

/** Of five million only the memory that they take is another. */
const NOTHINGS = ALL ? 5_000_000 : 300_000

test(`${NOTHINGS} features that are nothing are told in 200 lines, and read no further`, () => {
  const nulls = `[${'null,'.repeat(NOTHINGS - 1)}null]`
  const text = `{"type":"FeatureCollection","plan":{"format":"fieldpair-plan","version":1},"features":${nulls}}`
  const problems = problemsOf(text)
  expect(problems).toHaveLength(201)
  expect(problems[199]).toMatchObject({ at: 'features[199]' })
  const inLine = text.replace(
    nulls,
    `[{"type":"Feature","id":"l","properties":{"kind":"line"},"geometry":{"type":"LineString","coordinates":${nulls}}}]`,
  )
  expect(problemsOf(inLine)).toHaveLength(201)
})

test('20,000 features of one id, and a circuit of 20,000 lines, take no square of the time', () => {
  const stations = Array.from({ length: 20_001 }, (_, index) => station(`s${index}`, index / 1000))
  const lines = Array.from({ length: 20_000 }, (_, index) =>
    line(`l${index}`, `s${index}`, `s${index + 1}`, [
      [index / 1000, 10],
      [(index + 1) / 1000, 10],
    ]),
  )
  const circuits = [{ id: 'c', lines: lines.map((each) => each.id).reverse() }]
  within(10, () => expect(parsePlan(fileWith([...stations, ...lines], { circuits })).ok).toBe(true))
  const same = Array.from({ length: 20_000 }, () => station('s', 0))
  within(5, () => expect(problemsOf(fileWith(same))).toHaveLength(201))
})

test('ids and members named __proto__ and constructor are names like any other', () => {
  const ends = [
    [1, 10],
    [2, 10],
  ]
  const text = fileWith(
    [station('__proto__', 1), station('constructor', 2), line('toString', '__proto__', 'constructor', ends)],
    { circuits: 'CIRCUITS', hasOwnProperty: 1 },
  )
    .replace(
      '"CIRCUITS"',
      '[{"id":"__proto__","lines":["toString"],"sets":{"__proto__":"crank-1600","constructor":"crank-1600"},"__proto__":{"polluted":1}}]',
    )
    .replace('"features":', '"__proto__":{"polluted":2},"features":')
  const plan = planOf(text)
  expect([...plan.circuits.get('__proto__' as CircuitId)!.sets.keys()]).toEqual(['__proto__', 'constructor'])
  expect(plan.stations.get('__proto__' as StationId)?.name).toBe('__proto__')
  expect(({} as { polluted?: unknown }).polluted).toBeUndefined()
  const again = formatPlan(plan)
  expect(formatPlan(planOf(again))).toBe(again)
  expect(again).toContain('"polluted": 1')
  expect(again).toContain('"polluted": 2')
})

test('a set named after a built-in member of objects is unheard of', () => {
  const ends = [
    [1, 10],
    [2, 10],
  ]
  const circuits = [{ id: 'c', lines: ['l'], sets: { a: 'constructor' } }]
  const text = fileWith([station('a', 1), station('b', 2), line('l', 'a', 'b', ends)], { circuits })
  expect(problemsOf(text)).toMatchObject([{ code: 'unknown-set', at: 'plan.circuits[0].sets.a' }])
})

test('a number beyond all numbers is refused', () => {
  const text = QUARRY_TEXT.replace('"wireTempC": 12', '"wireTempC": 1e999')
  expect(problemsOf(text)).toMatchObject([{ code: 'out-of-range', at: 'plan.wireTempC' }])
})

test('a spreadsheet, a picture and noise end in a sentence', () => {
  for (const text of ['a;b;c\n1;2;3', '\u0089PNG\r\n\u001a\n', '\uFFFD\uFFFD\u0000', '<?xml version="1.0"?>'])
    expect(problemsOf(text)).toMatchObject([{ code: 'not-json' }])
  for (const text of ['null', '7', '"plan"', '[]', '{}'])
    expect(problemsOf(text)).toMatchObject([{ code: 'no-plan' }])
})

const JUNK: readonly unknown[] = [
  ...[null, true, '', 'NaN', 'gate', 'l1', -1, 0, 0.5, 1e308, [], {}, [[]]],
  ...[[1, 2], { id: 'gate' }, [null], [-20.1, 47.3], ['l1', 'l2'], { kind: 'line' }],
]

/** The file with what stands at a random place dropped, doubled, or put junk for. */
function mutate(file: unknown, way: readonly number[], junk: unknown): void {
  let at = file as Record<string, unknown>
  for (const turn of way) {
    const names = Object.keys(at)
    const name = names[turn % names.length]
    if (name === undefined) return
    const below = at[name]
    if (typeof below === 'object' && below !== null && turn % 7 !== 0) {
      at = below as Record<string, unknown>
      continue
    }
    if (junk === undefined) delete at[name]
    else at[name] = structuredClone(junk)
    return
  }
}

test('a good plan spoilt at random places is read or refused, with places and sentences, and never throws', () => {
  const way = fc.array(fc.nat({ max: 1000 }), { minLength: 1, maxLength: 9 })
  const mutation = fc.tuple(way, fc.option(fc.constantFrom(...JUNK), { nil: undefined }))
  let refused = 0
  fc.assert(
    fc.property(fc.array(mutation, { minLength: 1, maxLength: 4 }), (mutations) => {
      const file = JSON.parse(QUARRY_TEXT)
      for (const [where, junk] of mutations) mutate(file, where, junk)
      const result = parsePlan(JSON.stringify(file))
      if (result.ok) {
        const text = formatPlan(result.value)
        expect(planOf(text)).toEqual(result.value)
        return
      }
      refused++
      for (const { at, message } of result.problems) {
        expect(at).not.toBe('')
        expect(message).toMatch(/^[^\n]+\.$/)
      }
    }),
    { numRuns: cases(300) },
  )
  expect(refused).toBeGreaterThan(60)
})

test('a good text spoilt at random characters is read or refused, and never throws', () => {
  const place = fc.nat({ max: QUARRY_TEXT.length })
  fc.assert(
    fc.property(place, place, fc.string({ unit: 'binary', maxLength: 5 }), (start, length, noise) => {
      const text = QUARRY_TEXT.slice(0, start) + noise + QUARRY_TEXT.slice(start + (length % 9))
      const result = parsePlan(text)
      expect(result.ok || result.problems.length > 0).toBe(true)
    }),
    { numRuns: cases(60) },
  )
})
