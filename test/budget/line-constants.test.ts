import { expect, test } from 'vitest'
import { lineConstants } from '../../src/budget/line-constants'
import { ringerOhm } from '../../src/budget/ringer'
import { OHMS_ONLY } from '../reference/test-circuit'

const WIRE = { ...OHMS_ONLY, nanoFPerKm: 28, wetNanoFPerKm: 75, dryMicroSPerKm: 1, wetMicroSPerKm: 60 }

test('wet wire has its own capacitance and leakage; without one of its own it keeps the dry capacitance', () => {
  expect(lineConstants(WIRE, 'dry', 20).faradPerKm).toBeCloseTo(28e-9, 15)
  expect(lineConstants(WIRE, 'dry', 20).siemensPerKm).toBeCloseTo(1e-6, 12)
  expect(lineConstants(WIRE, 'wet', 20).faradPerKm).toBeCloseTo(75e-9, 15)
  expect(lineConstants(WIRE, 'wet', 20).siemensPerKm).toBeCloseTo(60e-6, 12)
  const { wetNanoFPerKm: _, ...one } = WIRE
  expect(lineConstants(one, 'wet', 20).faradPerKm).toBeCloseTo(28e-9, 15)
})

// 6930 Ω + 8 µF, the older ringer equivalent, has |Z(20 Hz)| of 7001 Ω; five of them, 1386 Ω + 40 µF, 1400 Ω: the limit of
// TIA-968-A table 6 and 47 CFR 68.312 (1997), as an analogue-port data sheet states the same load.
test('a capacitor in series takes reactance off that of the coil', () => {
  const capacitive = ringerOhm({ ohms: 1386, microF: 40, minVolts: 1 }, 20)
  expect(Math.hypot(capacitive.re, capacitive.im)).toBeCloseTo(1400.2, 1)
  // At resonance, 1 / (2π √(LC)), nothing but the resistance is left.
  const [henries, microF] = [10, 10]
  const resonantHz = 1 / (2 * Math.PI * Math.sqrt(henries * microF * 1e-6))
  expect(ringerOhm({ ohms: 1000, henries, microF, minVolts: 1 }, resonantHz).im).toBeCloseTo(0, 6)
})
