import { describe, expect, test } from 'vitest'
import { add, divide, ONE } from '../../src/budget/complex'
import { lineChain, piSection } from '../../src/budget/uniform-line'

const LINE = { ohmPerKm: 65, henryPerKm: 6e-4, faradPerKm: 80e-9, siemensPerKm: 60e-6 }
const KM = 8
const [FROM_OHM, TO_OHM] = [40, 300] as const

const bare = piSection(lineChain(LINE, KM, 1000))
const grounded = piSection(lineChain(LINE, KM, 1000, [FROM_OHM, TO_OHM]))

/** What is seen into one end of a π with the other end open, Ω. */
const openOhm = (near: 'shuntFrom' | 'shuntTo', pi: typeof bare) => {
  const far = near === 'shuntFrom' ? 'shuntTo' : 'shuntFrom'
  const beyond = divide(ONE, add(divide(ONE, pi.series), divide(ONE, pi[far])))
  return divide(ONE, add(pi[near], beyond))
}

describe('an earth return has its electrodes in series, each at its own end (circuit theory: nothing flows in the open one)', () => {
  test('seen from the start with the far end open, only the near electrode counts', () => {
    const seen = openOhm('shuntFrom', grounded)
    const line = openOhm('shuntFrom', bare)
    expect(seen.re).toBeCloseTo(line.re + FROM_OHM, 6)
    expect(seen.im).toBeCloseTo(line.im, 6)
  })
  test('seen from the end, only the one there', () => {
    expect(openOhm('shuntTo', grounded).re).toBeCloseTo(openOhm('shuntTo', bare).re + TO_OHM, 6)
  })
  test('without shunts the line is just the sum of what stands in series', () => {
    const dry = { ...LINE, faradPerKm: 0, siemensPerKm: 0 }
    const ohm = divide(ONE, piSection(lineChain(dry, KM, 0, [FROM_OHM, TO_OHM])).series)
    expect(ohm.re).toBeCloseTo(65 * KM + FROM_OHM + TO_OHM, 6)
    expect(ohm.im).toBeCloseTo(0, 9)
  })
})
