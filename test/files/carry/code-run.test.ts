import { expect, test } from 'vitest'
import { seeded } from '../../../src/budget/seeded'
import { fromBase45, toBase45 } from '../../../src/files/carry/base45'
import { CodeCollector, codeRun } from '../../../src/files/carry/code-run'

const bytesOf = (text: string) => new TextEncoder().encode(text)
const random = (length: number, seed: number) => {
  const next = seeded(seed)
  return Uint8Array.from({ length }, () => Math.floor(next() * 256))
}

// RFC 9285, sections 4.3 and 4.4: the three examples and the one of decoding.
test.each([
  ['AB', 'BB8'],
  ['Hello!!', '%69 VD92EX0'],
  ['base-45', 'UJCLQE7W581'],
  ['ietf!', 'QED8WEX0'],
])('base 45 of “%s” is that of RFC 9285', (plain, coded) => {
  expect(toBase45(bytesOf(plain))).toBe(coded)
  expect(fromBase45(coded)).toEqual(bytesOf(plain))
})

// RFC 9285, section 6: what must be refused.
test.each(['GGW', ':::', 'A', 'ABCD', 'abc', 'A,B'])('“%s” is no base 45', (text) => {
  expect(fromBase45(text)).toBeUndefined()
})

function receive(bytes: Uint8Array, lost: number, seed: number, from = 0): number {
  const run = codeRun(bytes)
  const collector = new CodeCollector()
  const next = seeded(seed)
  let taken = 0
  for (let number = from; ; number++) {
    if (next() < lost) continue
    taken++
    const received = collector.take(run.text(number))!
    expect(received.need).toBe(run.blocks)
    if (received.bytes) {
      expect(received.bytes).toEqual(bytes)
      return taken
    }
    if (taken > 4 * run.blocks + 40) throw new Error('the run does not come together')
  }
}

test.each([0, 1, 351, 352, 353, 2055, 45_000])(
  '%d bytes come over with no code lost, in as few as there are blocks',
  (length) => {
    expect(receive(random(length, length), 0, 1)).toBe(Math.max(1, Math.ceil(length / 352)))
  },
)

test('with three of ten lost, or begun anywhere in the run, a few more are enough', () => {
  const bytes = random(20_000, 7)
  const blocks = codeRun(bytes).blocks
  const over: number[] = []
  for (let seed = 1; seed <= 5; seed++) {
    over.push(receive(bytes, 0.3, seed) - blocks)
    over.push(receive(bytes, 0.3, seed, 1000 * seed) - blocks)
  }
  // Random rows need 1.6 beyond the blocks on the average; over 10 runs that mean strays by some 0.6, and twice that is told.
  expect(over.reduce((sum, each) => sum + each, 0) / over.length).toBeLessThan(1.6 + 1.2)
  expect(Math.max(...over)).toBeLessThan(20)
})

test('codes come twice, out of order, and among strangers', () => {
  const bytes = random(3000, 3)
  const run = codeRun(bytes)
  const collector = new CodeCollector()
  expect(collector.take('https://example.org')).toBeUndefined()
  expect(collector.take('FP:')).toBeUndefined()
  expect(collector.take(`FP:${toBase45(random(362, 1))}`)).toBeUndefined()
  const order = [5, 5, 0, 3, 1, 1, 8, 2, 7, 4, 6]
  const all = order.map((number) => collector.take(run.text(number))!)
  expect(all[1]!.have).toBe(1)
  expect(all.at(-1)!.bytes).toEqual(bytes)
})

test('a misread code is found out, and the next codes mend it', () => {
  const bytes = random(1000, 4)
  const run = codeRun(bytes)
  const collector = new CodeCollector()
  const harmed = fromBase45(run.text(1).slice(3))!
  harmed[100]! ^= 1
  collector.take(run.text(0))
  collector.take(`FP:${toBase45(harmed)}`)
  expect(collector.take(run.text(2))!.bytes).toBeUndefined()
  for (const number of [0, 1]) collector.take(run.text(number))
  expect(collector.take(run.text(2))!.bytes).toEqual(bytes)
})

test('another run begins anew', () => {
  const [a, b] = [random(1000, 5), random(1000, 6)]
  const collector = new CodeCollector()
  collector.take(codeRun(a).text(0))
  collector.take(codeRun(b).text(0))
  expect(collector.take(codeRun(b).text(1))!.have).toBe(2)
})
