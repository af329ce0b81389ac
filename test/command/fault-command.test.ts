import { expect, test } from 'vitest'
import { runFault } from '../../src/command/fault-command'
import { formatPlan } from '../../src/files/format-plan'
import { fieldPlan, TEST_WIRE } from '../field/field-plan'

// a ── 4 km ── b ── 2 km ── c, of 130 Ω/km that may be 8 % off
const PLAN = formatPlan(
  fieldPlan(
    [
      { id: 'l1', from: 'a', to: 'b', wireM: 4000 },
      { id: 'l2', from: 'b', to: 'c', wireM: 2000 },
    ],
    { wires: [{ ...TEST_WIRE, spread: { loopOhmPerKm: 8 } }] },
  ),
)

async function run(evidence: unknown, ...args: readonly string[]) {
  const printed = { out: '', err: '' }
  const files: Readonly<Record<string, string>> = {
    plan: PLAN,
    evidence: typeof evidence === 'string' ? evidence : JSON.stringify(evidence),
  }
  const code = await runFault(
    args.length > 0 ? args : ['plan', '--circuit', 'c1', '--evidence', 'evidence'],
    {
      readBytes: async (path) => {
        if (!(path in files)) throw new Error('no such file')
        return new TextEncoder().encode(files[path])
      },
      write: async () => {},
      out: (text) => {
        printed.out += text
      },
      err: (text) => {
        printed.err += text
      },
    },
  )
  return { code, ...printed }
}

const loop = (at: string, toward: string, value: number) => ({
  ...{ at, toward, far: 'open', what: 'loopOhms', value, meterPct: 1, tempC: 20 },
})

test('a short read from both ends is found where it is, in the words and members of the contract', async () => {
  // 2.5 km from a, with 3 Ω of its own.
  const { code, out } = await run([loop('a', 'c', 328), loop('c', 'a', 458)])
  expect(code).toBe(0)
  const found = JSON.parse(out)
  expect(found.kinds[0]).toMatchObject({ kind: 'short' })
  expect(found.kinds.map(({ kind }: { kind: string }) => kind).sort()).toEqual([
    'leak',
    'open',
    'resistance',
    'short',
  ])
  const sum = found.kinds.reduce((all: number, { chance }: { chance: number }) => all + chance, 0)
  expect(sum).toBeCloseTo(1, 9)
  const { line, fromM, toM } = found.band
  expect(line).toBe('l1')
  expect(fromM).toBeLessThan(2500)
  expect(toM).toBeGreaterThan(2500)
  // 1 % on 328 and on 458 Ω leaves some 20 m of the middle: the lot of wire falls out.
  expect(toM - fromM).toBeLessThan(90)
  const [place] = found.places
  expect(place).toMatchObject({ line: 'l1' })
  // The line runs north over its bend and back: half its wire lies to the north of a.
  expect(place.lat).toBeGreaterThan(0)
  expect(found.next[0]).toMatchObject({ do: expect.stringMatching(/^(At|Walk)/), leaves: expect.any(Number) })
})

test.each([
  ['no JSON', '[', /evidence/],
  ['no list', {}, /evidence: evidence/],
  ['a station that is not there', [{ ...loop('a', 'c', 1), at: 'x' }], /evidence\[0\]\.at/],
  ['less than no ohms', [loop('a', 'c', -4)], /evidence\[0\]\.value/],
  ['a meter that looks at itself', [loop('a', 'a', 4)], /evidence\[0\]\.toward/],
  [
    'a meter beyond the line',
    [{ ...loop('a', 'from', 4), at: undefined, line: 'l1', wireM: 5000 }],
    /5000 m/,
  ],
  ['no arms', [{ murray: [0, 0], at: 'a', toward: 'c' }], /evidence\[0\]\.murray/],
  ['nothing known', [{ colour: 'red' }], /evidence\[0\]/],
  ['an answer that is none', [{ rings: ['a', 'c'], ok: 'no' }], /evidence\[0\]\.ok/],
  [
    'more different readings than can be waited for',
    Array.from({ length: 41 }, (_, k) => loop('a', 'c', 10 * 1.1 ** k)),
    /more than 40 different readings/,
  ],
  ['no value', [{ ...loop('a', 'c', 1), value: undefined }], /evidence\[0\]\.value/],
])('%s is refused with a sentence, and nothing is printed', async (_, evidence, sentence) => {
  const { code, out, err } = await run(evidence)
  expect([code, out]).toEqual([2, ''])
  expect(err).toMatch(sentence)
})

test.each([
  ['no plan', [], /no plan|name/],
  ['no such circuit', ['plan', '--circuit', 'c9', '--evidence', 'evidence'], /no circuit c9/],
  ['no evidence', ['plan', '--circuit', 'c1'], /name the circuit and the evidence/],
  ['no such file', ['plan', '--circuit', 'c1', '--evidence', 'gone'], /gone: cannot be read/],
])('%s on the command line is refused', async (_, args, sentence) => {
  const { code, out, err } = await run([], ...(args.length > 0 ? args : ['--circuit', 'c1']))
  expect([code, out]).toEqual([2, ''])
  expect(err).toMatch(sentence)
})
