import { expect, test } from 'vitest'
import { seeded, seededNormal } from '../../src/budget/seeded'
import { measurePlan } from '../../src/measure/measure-line'
import { learnedOf } from '../../src/report/learned-of'
import { fieldPlan, TEST_WIRE } from './field-plan'

// `LOTS=400` draws as many.
const LOTS = Number(process.env.LOTS ?? 60)

const SPREAD = { loopOhmPerKm: 8, nanoFPerKm: 15, wetMicroSPerKm: 100 }
const { wetNanoFPerKm: _, ...DRY_OR_WET } = TEST_WIRE
const BOOK = { ...DRY_OR_WET, wetMicroSPerKm: 20, spread: SPREAD }
type Figure = keyof typeof SPREAD

/** A lot of wire as it really is, read six times at tags by a meter of 1 %; now and then one reading is a slip. */
function lot(seed: number) {
  const [random, normal] = [seeded(seed), seededNormal(seed + 1e5)]
  const drawn = (pct: number) => (1 + pct / 100) ** (normal() / 1.96)
  const real = {
    loopOhmPerKm: BOOK.loopOhmPerKm * drawn(SPREAD.loopOhmPerKm),
    nanoFPerKm: BOOK.nanoFPerKm * drawn(SPREAD.nanoFPerKm),
    wetMicroSPerKm: BOOK.wetMicroSPerKm * drawn(SPREAD.wetMicroSPerKm),
  }
  const wireM = 2000 + 4000 * random()
  const tempC = Math.round(40 * random() - 5)
  const slip = random() < 0.2 ? Math.floor(6 * random()) : -1
  const ohmPerKm = real.loopOhmPerKm * (1 + BOOK.tempCoeffPerC * (tempC - 20))
  const siemensPerKm = real.wetMicroSPerKm * 1e-6
  // A line of R and G at 0 Hz: Z₀ tanh γl joined at the far end, Z₀ coth γl open (W. L. Everitt, Communication Engineering, ch. 4; from memory).
  const [z0, gamma] = [Math.sqrt(ohmPerKm / siemensPerKm), Math.sqrt(ohmPerKm * siemensPerKm)]
  const shown = {
    loopOhms: (km: number) => z0 * Math.tanh(gamma * km),
    kOhms: (km: number) => z0 / Math.tanh(gamma * km) / 1000,
    nanoF: (km: number) => real.nanoFPerKm * km,
  }
  const field = Array.from({ length: 6 }, (_, k) => {
    const what = (['loopOhms', 'kOhms', 'nanoF'] as const)[k % 3]!
    const at = 300 + (wireM - 600) * random()
    const toward = random() < 0.5 ? 'from' : 'to'
    const factor = k === slip ? (what === 'kOhms' ? 0.05 : 1.6) : 1
    const value = shown[what]((toward === 'from' ? at : wireM - at) / 1000) * drawn(1) * factor
    const far = what === 'loopOhms' ? 'short' : 'open'
    const as = { meterPct: 1, tempC, weather: 'wet' }
    return { id: `f${k}`, line: 'l1', kind: 'reading', wireM: at, toward, far, what, value, ...as }
  })
  const plan = fieldPlan([{ id: 'l1', from: 'a', to: 'b', wireM }], { wires: [BOOK], field })
  return { real, slip, learned: learnedOf(plan, measurePlan(plan)) }
}

test('ohms, capacitance and leakage that are learned hold the lot as it really is, and a slip is asked about', () => {
  const held = new Map<string, { held: number; of: number }>()
  let [slips, asked, asidesOfSound] = [0, 0, 0]
  for (let seed = 1; seed <= LOTS; seed++) {
    const { real, slip, learned } = lot(seed)
    const odd = learned.odd.map(({ record }) => record)
    if (slip >= 0) slips++
    if (odd.includes(`f${slip}`)) asked++
    asidesOfSound += odd.filter((record) => record !== `f${slip}`).length
    for (const [member, figure] of Object.entries(learned.figures.get('w') ?? {})) {
      const own = held.get(member) ?? { held: 0, of: 0 }
      const truth = real[member as Figure]
      held.set(member, { held: own.held + +(figure.low <= truth && truth <= figure.high), of: own.of + 1 })
    }
  }
  expect([...held.keys()].sort()).toEqual(['loopOhmPerKm', 'nanoFPerKm', 'wetMicroSPerKm'])
  // Of so many draws at 0.95 three standard deviations less.
  for (const { held: own, of } of held.values())
    expect(own).toBeGreaterThanOrEqual(0.95 * of - 3 * Math.sqrt(of * 0.95 * 0.05))
  expect(slips).toBeGreaterThan(0)
  expect(asked).toBe(slips)
  // Three deviations: three of a thousand, and the figures of a rare lot with them.
  expect(asidesOfSound).toBeLessThan(0.02 * 6 * LOTS + 3)
})
