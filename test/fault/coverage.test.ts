import { expect, test } from 'vitest'
import type { Known } from '../../src/fault/evidence'
import { locateFault } from '../../src/fault/locate'
import { todaysCases } from '../cases'
import { simulator } from '../simulator/volts-at'
import { type Planted, planted } from './planted'
import { looksAt, modelOf, take } from './planted-evidence'

// `FAULTS=1000 ALL=1` looks at as many, `TELL=1` tells of each.
const SEEDS = todaysCases(Number(process.env.FAULTS ?? 16), 2)
const FAULTS = SEEDS.length
const FIRST = Number(process.env.FIRST_FAULT ?? 1)

/** Wire from where the crew first reads to the fault, m: the row's lines lead from station to station. */
function distanceM({ lines, line, wireM }: Planted): number {
  const byEnd = new Map(lines.map((each) => [each.to, each]))
  const own = lines.find(({ id }) => id === line)!
  let sum = wireM
  for (let before = byEnd.get(own.from); before; before = byEnd.get(before.from)) sum += before.wireM
  return sum
}

const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!

test('the band of 95 holds the planted place 95 times of a hundred, and is a third of what one reading gives', {
  timeout: 3_600_000,
}, async () => {
  const volts = await simulator()
  const parts: number[] = []
  const told = new Map<string, { held: number; of: number; right: number }>()
  for (const seed of SEEDS) {
    const fault = planted(FIRST + seed)
    const evidence: Known[] = []
    for (const look of looksAt(fault)) evidence.push(await take(fault, look, volts))
    const { plan, model } = modelOf(fault)
    const found = locateFault(plan, model, evidence)
    // Where no line holds as much the densest pieces of all lines do: the three darkest tones.
    const stretches = found.band ? [found.band] : found.shade.filter(({ tone }) => tone <= 2)
    const holds = stretches.some(
      ({ line, fromM, toM }) => line === fault.line && fault.wireM >= fromM && fault.wireM <= toM,
    )
    const width = stretches.reduce((sum, { fromM, toM }) => sum + toM - fromM, 0)
    const own = told.get(fault.kind) ?? { held: 0, of: 0, right: 0 }
    const right = found.kinds[0]!.kind === fault.kind
    told.set(fault.kind, { held: own.held + +holds, of: own.of + 1, right: own.right + +right })
    // Ohms from the ends do not tell where a joint lies: there is no single reading to stand beside.
    if (fault.kind !== 'resistance') parts.push(width / (0.1 * distanceM(fault)))
    if (process.env.TELL)
      console.log(
        FIRST + seed,
        fault.kind,
        fault.line,
        fault.wireM.toFixed(0),
        fault.ohms.toFixed(1),
        holds,
        width.toFixed(0),
      )
  }
  const held = [...told.values()].reduce((sum, each) => sum + each.held, 0)
  console.log(
    `${held} of ${FAULTS} held; median ${median(parts).toFixed(2)} of one reading`,
    JSON.stringify([...told]),
  )
  // Three standard deviations of a count of so many; of a thousand, 93 to 97 of a hundred, and of each kind no fewer than chance would have.
  for (const { held: own, of } of told.values())
    expect(own).toBeGreaterThanOrEqual(0.95 * of - 3 * Math.sqrt(of * 0.95 * 0.05))
  const sigma = Math.sqrt(FAULTS * 0.95 * 0.05)
  expect(held).toBeGreaterThanOrEqual(0.95 * FAULTS - 3 * sigma)
  expect(held).toBeLessThanOrEqual(Math.min(FAULTS, 0.95 * FAULTS + 3 * sigma))
  expect(median(parts)).toBeLessThan(1 / 3)
})
