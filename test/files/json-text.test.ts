import fc from 'fast-check'
import { expect, test } from 'vitest'
import { jsonFault } from '../../src/files/json-fault'
import { parseJson } from '../../src/files/json-text'
import { QUARRY_TEXT } from './quarry-net'

const problemOf = (text: string) => {
  const result = parseJson(text)
  return result.ok ? undefined : result.problems[0]
}

test.each([
  ['a comma before the closing bracket', '{\n  "a": [1, 2,]\n}', 'line 2, column 14'],
  ['a comma after the last member', '{\n  "a": 1,\n}', 'line 3, column 1'],
  ['a forgotten comma', '[1 2]', 'line 1, column 4'],
  ['a name without quotes', '{a: 1}', 'line 1, column 2'],
  ['a forgotten colon', '{"a" 1}', 'line 1, column 6'],
  ['a word that is none of JSON', '[NaN]', 'line 1, column 2'],
  ['a word with a stroke in it', '[nul-l]', 'line 1, column 5'],
  ['a number with a leading zero', '[01]', 'line 1, column 3'],
  ['a string that runs over the line', '["a\n"]', 'line 1, column 4'],
  ['a false escape', String.raw`["\x"]`, 'line 1, column 3'],
  ['the wrong bracket', '{"a": [1}', 'line 1, column 9'],
  ['a file cut short', '{"a": [1, ', 'line 1, column 11'],
  ['a second value', '{} {}', 'line 1, column 4'],
  ['bytes that are no text', '\u0000\u0001PK', 'line 1, column 1'],
])('%s is found at its line and column', (_, text, at) => {
  expect(() => JSON.parse(text)).toThrow()
  expect(problemOf(text)).toMatchObject({ code: 'not-json', at })
  expect(problemOf(text)!.message).toMatch(/^This is not JSON: .+ stands where .+ should\./)
})

test('an empty file has a sentence of its own', () => {
  expect(problemOf('')?.message).toContain('empty')
  expect(problemOf(' \n\t ')?.message).toContain('empty')
})

test('a byte order mark at the start is passed over', () => {
  expect(parseJson('\uFEFF{"a":1}')).toEqual({ ok: true, value: { a: 1 } })
})

test('brackets inside strings do not count as nesting', () => {
  expect(parseJson(JSON.stringify('["{'.repeat(500))).ok).toBe(true)
})

/** Where V8 says that it stopped, when it says so. */
function placeOfEngine(text: string): number | undefined {
  try {
    JSON.parse(text)
  } catch (error) {
    const place = /position (\d+)/.exec(String(error))
    return place ? Number(place[1]) : undefined
  }
  return undefined
}

test('the place found is the place where the JavaScript engine stops', () => {
  let compared = 0
  const cut = fc.tuple(
    fc.nat({ max: QUARRY_TEXT.length - 1 }),
    fc.constantFrom(...'{}[]",:x0-.\\\n'),
    fc.nat({ max: 3 }),
  )
  fc.assert(
    fc.property(cut, ([at, char, drop]) => {
      const text = QUARRY_TEXT.slice(0, at) + char + QUARRY_TEXT.slice(at + drop)
      const expected = placeOfEngine(text)
      if (expected === undefined) return
      compared++
      // The engine names the second character of a broken number or escape, this program its first or where it breaks.
      expect(Math.abs(jsonFault(text).offset - expected)).toBeLessThanOrEqual(2)
    }),
    { numRuns: 400 },
  )
  expect(compared).toBeGreaterThan(50)
})
