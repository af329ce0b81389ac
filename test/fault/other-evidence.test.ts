import { describe, expect, test } from 'vitest'
import type { FaultFound } from '../../src/fault/locate'
import { parseEvidence } from '../../src/files/parse-evidence'
import { measurePlan } from '../../src/measure/measure-line'
import { locateInCircuit } from '../../src/report/locate-in-circuit'
import { METRES_PER_MILE } from '../../src/units'
import { fieldPlan, TEST_WIRE } from '../field/field-plan'

// a ── 3 km ── b ── 2 km ── c, a telephone at each
const ROW = [
  { id: 'l1', from: 'a', to: 'b', wireM: 3000 },
  { id: 'l2', from: 'b', to: 'c', wireM: 2000 },
]
const SPREAD = { ...TEST_WIRE, spread: { loopOhmPerKm: 8, nanoFPerKm: 15 } }
const SETS = { a: 'crank-1600', b: 'crank-1600', c: 'crank-1600' }

function found(evidence: readonly object[], wanted: Parameters<typeof fieldPlan>[1] = {}): FaultFound {
  const plan = fieldPlan(ROW, { wires: [SPREAD], sets: SETS, ...wanted })
  const circuit = plan.circuits.values().next().value!
  const read = parseEvidence(new TextEncoder().encode(JSON.stringify(evidence)), plan, circuit)
  if (!read.ok) throw new Error(read.problems[0]!.message)
  const answer = locateInCircuit(plan, circuit, measurePlan(plan), read.value)
  if (!answer.ok) throw new Error(answer.problems[0]!.message)
  return answer.value
}

const chanceOf = ({ kinds }: FaultFound, kind: string) => kinds.find((each) => each.kind === kind)!.chance
const chanceOn = ({ places }: FaultFound, line: string) =>
  places.reduce((sum, each) => (each.line === line ? sum + each.chance : sum), 0)

describe('what goes well', () => {
  test.each([
    ['one ringing', [{ rings: ['a', 'c'], ok: true }]],
    ['a crank that turns as ever', [{ crank: 'as-ever', at: 'a' }]],
    [
      'a stretch found sound over and over',
      [{ sound: { line: 'l1', fromM: 0, toM: 3000 } }, { rings: ['a', 'b'], ok: true }],
    ],
  ])('%s makes no fault likely', (_, evidence) => {
    expect(found(evidence).nothingWrong).toBeGreaterThan(0.5)
  })
  test('a ringing that fails does', () => {
    expect(found([{ rings: ['a', 'c'], ok: false }]).nothingWrong).toBeLessThan(0.05)
  })
  test('one reading alone is no contradiction, even of no ohms at all', () => {
    const answer = found([{ far: 'open', what: 'loopOhms', at: 'a', toward: 'c', value: 0 }])
    expect([answer.several, answer.kinds[0]!.kind]).toEqual([0, 'short'])
    expect(answer.band).toMatchObject({ line: 'l1', fromM: 0 })
  })
  test('what nothing there could give is said to tell nothing', () => {
    const answer = found([{ far: 'set', what: 'mA', at: 'a', toward: 'c', value: 3 }])
    expect(answer.unused).toEqual([0])
  })
})

describe('an echo', () => {
  // 176 000 to 180 000 miles per second on open wire: US Army subcourse SS0330, par. 58. The wire, per loop mile: 3.37 mH, 0.00915 µF
  // (Principles of Electricity Applied to Telephone and Telegraph Work; from memory), whose 0.16 mH within the wires a pulse does not meet.
  const openWire = {
    ...TEST_WIRE,
    ...{ loopOhmPerKm: 2.55, loopMilliHPerKm: 3370 / METRES_PER_MILE, nanoFPerKm: 9150 / METRES_PER_MILE },
  }
  test.each([176_000, 180_000])('of %d miles per second comes from where it says', (milesPerSecond) => {
    const ns = (2e9 * 2) / METRES_PER_MILE / (milesPerSecond / 1000)
    const answer = found([{ echo: { ns, swing: 'up' }, at: 'a', toward: 'c', meterPct: 0.5 }], {
      wires: [openWire],
    })
    // The echo is of 2 km at that speed. A pulse is a little faster than speech: within 8 %.
    const middle = (answer.band!.fromM + answer.band!.toM) / 2
    expect(middle).toBeGreaterThan(2000)
    expect(middle).toBeLessThan(2160)
  })
  test('that swings up is of a break or a joint, down of a short or a leak', () => {
    const of = (swing: string) => found([{ echo: { m: 2500, velocityPct: 60, swing }, at: 'a', toward: 'c' }])
    const [up, down] = [of('up'), of('down')]
    expect(chanceOf(up, 'open') + chanceOf(up, 'resistance')).toBeGreaterThan(0.95)
    expect(chanceOf(down, 'short') + chanceOf(down, 'leak')).toBeGreaterThan(0.95)
    expect(up.band).toMatchObject({ line: 'l1' })
  })
  test('from the middle of a line comes from the side that was looked to', () => {
    const answer = found([{ echo: { ns: 6000 }, line: 'l1', wireM: 1500, toward: 'from' }])
    expect(answer.band!.toM).toBeLessThan(1500)
  })
})

describe('one wire against the earth', () => {
  const earth = { far: 'open', what: 'loopOhms', meterPct: 1, tempC: 20 }
  test('from both ends tells the wire and the place, whatever the earth has of its own', () => {
    // 1800 m of one wire at 65 Ω/km and 200 Ω; from the other end 3200 m.
    const answer = found([
      { ...earth, at: 'a', toward: 'c', value: 317, wire: 'a' },
      { ...earth, at: 'c', toward: 'a', value: 408, wire: 'a' },
    ])
    expect(answer.toEarth).toBeGreaterThan(0.95)
    expect(answer.wires!.a).toBeGreaterThan(0.95)
    expect(answer.band!.fromM).toBeLessThan(1800)
    expect(answer.band!.toM).toBeGreaterThan(1800)
    expect(answer.band!.toM - answer.band!.fromM).toBeLessThan(300)
  })
  test('joined to the earth at the far end tells which wire is broken', () => {
    const joined = { far: 'short', at: 'a', toward: 'c' }
    const answer = found([
      { ...joined, what: 'kOhms', value: 5000, wire: 'b' },
      { ...joined, what: 'loopOhms', value: 390, wire: 'a' },
    ])
    expect(answer.kinds[0]!.kind).toBe('open')
    expect(answer.wires!.b).toBeGreaterThan(0.9)
  })
})

describe('another circuit', () => {
  test('that is heard while all else goes is a cross, or a split pair', () => {
    const answer = found([
      { stray: 'heard', at: 'a' },
      { rings: ['a', 'c'], ok: true },
    ])
    expect(answer.kinds.slice(0, 2).map(({ kind }) => kind)).toEqual(['crossed', 'split'])
  })
  test('whose bell rings while the own one beyond b is dead has changed places beyond b', () => {
    const answer = found([
      { stray: 'rings', at: 'a' },
      { rings: ['a', 'b'], ok: true },
      { rings: ['a', 'c'], ok: false },
    ])
    expect(answer.kinds[0]!.kind).toBe('swapped')
    expect(chanceOn(answer, 'l2')).toBeGreaterThan(0.85)
  })
  test('that lies beside one line only is met there', () => {
    const others = {
      circuits: [
        { id: 'c1', name: 'Net', lines: ['l1', 'l2'], sets: SETS, supply: null },
        { id: 'c2', name: 'Other', lines: ['l2'], sets: {}, supply: null },
      ],
    }
    const plan = { plan: others, lines: { l2: { pairs: 2 } } }
    const answer = found([{ stray: 'heard', at: 'a', circuit: 'c2' }], plan)
    // Before anything was known it was 0.4; a hum without a fault may come from anywhere.
    expect(chanceOn(answer, 'l2')).toBeGreaterThan(0.7)
  })
})

test('a record of the walk is evidence: what was read there, and what was tested sound', () => {
  const reading = { far: 'open', what: 'loopOhms', value: 131, tempC: 20, meterPct: 1 }
  const field = [
    { id: 'f1', line: 'l1', kind: 'tested', fromM: 0, toM: 1000 },
    { id: 'f2', line: 'l1', kind: 'reading', wireM: 1000, toward: 'to', ...reading },
  ]
  const answer = found([{ record: 'f1' }, { record: 'f2' }], { field })
  const spoken = found(
    [{ sound: { line: 'l1', fromM: 0, toM: 1000 } }, { line: 'l1', wireM: 1000, toward: 'to', ...reading }],
    { field },
  )
  expect(answer.band).toEqual(spoken.band)
  // 131 Ω are 1008 m, or less by what the short has of its own: up to 23 Ω are 180 m, and a short of more is not out of the question.
  expect(answer.band!.fromM).toBeGreaterThan(1400)
  expect(answer.band!.toM).toBeLessThan(2150)
})
