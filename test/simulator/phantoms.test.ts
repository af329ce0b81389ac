import { beforeAll, expect, test } from 'vitest'
import { parsePlan } from '../../src/files/parse-plan'
import type { Caution } from '../../src/report/caution'
import { reportPlan } from '../../src/report/report-plan'
import { simulator } from './volts-at'

// Two pairs, a repeating coil with a tap in the middle at both ends of each, and a telephone across the taps, wire by wire in the circuit
// simulator: coupled inductors of 400 H, so that nothing is lost but in the wire. Tolerance 0.2 %: 0.1 % for the program, and as much
// for what is left of magnetizing current and leakage in such coils.
const TOLERANCE = 2e-3
const [OHM, NANO_F, BETWEEN_NANO_F, KM] = [120, 40, 60, 9]

let volts: Awaited<ReturnType<typeof simulator>>
beforeAll(async () => {
  volts = await simulator()
})

/** Coil of one pair at one end: halves of the line side, and the set's side. */
const coil = (name: string, pair: string, end: number) => [
  `Lp${name} ${pair}1_${end} t${name} 100`,
  `Lq${name} t${name} ${pair}2_${end} 100`,
  `Ls${name} s${name} 0 400`,
  `Ka${name} Lp${name} Lq${name} 0.9999999`,
  `Kb${name} Lp${name} Ls${name} 0.9999999`,
  `Kc${name} Lq${name} Ls${name} 0.9999999`,
]
const SECTIONS = 60

/** @param moreOhms of one wire of the first pair */
function cards(moreOhms = 0): string[] {
  const perWire = (OHM * KM) / 2 / SECTIONS
  const list: string[] = []
  for (let k = 0; k < SECTIONS; k++) {
    for (const wire of ['a1', 'a2', 'b1', 'b2'])
      list.push(
        `R${wire}_${k} ${wire}_${k} ${wire}_${k + 1} ${perWire + (wire === 'a1' ? moreOhms / SECTIONS : 0)}`,
      )
  }
  for (let k = 0; k <= SECTIONS; k++) {
    const share = (k === 0 || k === SECTIONS ? 0.5 : 1) / SECTIONS
    // Four capacitors from pair to pair are in parallel for the phantom, and a quarter of them lies across each pair.
    const direct = (NANO_F - BETWEEN_NANO_F / 4) * KM * share
    list.push(`Ca_${k} a1_${k} a2_${k} ${direct}n`, `Cb_${k} b1_${k} b2_${k} ${direct}n`)
    for (const [n, one, other] of [
      [0, 'a1', 'b1'],
      [1, 'a1', 'b2'],
      [2, 'a2', 'b1'],
      [3, 'a2', 'b2'],
    ])
      list.push(`Cx${n}_${k} ${one}_${k} ${other}_${k} ${(BETWEEN_NANO_F * KM * share) / 4}n`)
  }
  for (const [pair, near, far] of [
    ['a', 'an', 'af'],
    ['b', 'bn', 'bf'],
  ] as const)
    list.push(...coil(near, pair, 0), ...coil(far, pair, SECTIONS))
  return [
    ...list,
    'Rgnd tbn 0 1e-3',
    'Raf saf 0 600',
    'Rbn sbn 0 600',
    'Rbf sbf 0 600',
    'Rph taf tbf 600',
    'Eph heard 0 taf tbf 1',
    'Rheard heard 0 1',
  ]
}
const fromPhantom = ['Vp vp 0 dc 0 ac 1', 'Rp vp tan 600', 'Ran san 0 600']
const fromSide = ['Vp vp 0 dc 0 ac 1', 'Rp vp san 600', 'Rtan tan 0 600']

function reported(coilDb: { voiceDb: number; ringDb: number }) {
  const place = (id: string, lon: number) => ({
    type: 'Feature',
    id,
    geometry: { type: 'Point', coordinates: [lon, 0] },
    properties: { kind: 'station' },
  })
  const set = { id: 't', talk: 'local', offHook: { dcOhms: 100, acOhms: 600, minMA: 0 }, maxLossDb: 40 }
  const bell = { generator: { volts: 80, hz: 20, ohms: 600 }, ringer: { ohms: 5000, minVolts: 5 } }
  const file = {
    type: 'FeatureCollection',
    plan: {
      format: 'fieldpair-plan',
      version: 1,
      allowances: { slackPct: { surface: 0 }, tailM: 500, coil: coilDb },
      catalog: {
        wires: [
          {
            ...{ id: 'w', loopOhmPerKm: OHM, tempCoeffPerC: 0.004, nanoFPerKm: NANO_F, loopMilliHPerKm: 0 },
            ...{ dryMicroSPerKm: 0, wetMicroSPerKm: 0, kgPerKm: 10, phantomNanoFPerKm: BETWEEN_NANO_F },
          },
        ],
        sets: [{ ...set, ...(coilDb.ringDb > 0 && bell) }],
      },
      circuits: ['one', 'two', 'phantom'].map((id) => ({
        id,
        lines: ['l'],
        sets: { a: 't', b: 't' },
        ...(id === 'phantom' && { over: 'phantom' }),
      })),
    },
    features: [
      place('a', 10),
      place('b', 10 + 8 / 111.319491),
      {
        type: 'Feature',
        id: 'l',
        geometry: {
          type: 'LineString',
          coordinates: [
            [10, 0],
            [10 + 8 / 111.319491, 0],
          ],
        },
        properties: { kind: 'line', from: 'a', to: 'b', wire: 'w', pairs: 2, legs: [{ lay: 'surface' }] },
      },
    ],
  }
  const read = parsePlan(JSON.stringify(file))
  if (!read.ok) throw new Error(JSON.stringify(read.problems))
  return reportPlan(read.value)
}
const ratio = (lossDb: number) => 10 ** (-lossDb / 20)

test('a phantom and the pairs under it lose what coupled coils in the simulator lose, and do not hear each other', async () => {
  const report = reported({ voiceDb: 0, ringDb: 0 })
  expect(report.lines[0]!.wireM).toBeCloseTo(1000 * KM, 0)
  const [over, crossed] = await volts([...cards(), ...fromPhantom], ['heard', 'saf'], 1000)
  const [side, intoPhantom] = await volts([...cards(), ...fromSide], ['saf', 'heard'], 1000)
  expect(Math.abs(over! / 0.5 / ratio(report.circuits[2]!.voice[0]!.lossDb) - 1)).toBeLessThan(TOLERANCE)
  expect(Math.abs(side! / 0.5 / ratio(report.circuits[0]!.voice[0]!.lossDb) - 1)).toBeLessThan(TOLERANCE)
  expect(crossed! / over!).toBeLessThan(1e-5)
  expect(intoPhantom! / side!).toBeLessThan(1e-5)
})

test('wires of a pair that differ are heard through as the caution has it', async () => {
  const isBalance = (caution: Caution) => caution.code === 'rider-balance'
  const caution = reported({ voiceDb: 0, ringDb: 0 }).cautions.find(isBalance)
  if (caution?.code !== 'rider-balance') throw new Error('no caution')
  expect(caution.unbalanceOhms).toBeCloseTo(0.01 * ((OHM * KM) / 2), 2)
  const [heard, near] = await volts([...cards(caution.unbalanceOhms), ...fromPhantom], ['heard', 'san'], 1000)
  // The estimate takes the current as the same all along and the pair as a short loop: within 6 dB on 9 km, and on the safe side.
  const crosstalkDb = 20 * Math.log10(heard! / near!)
  expect(crosstalkDb).toBeGreaterThan(caution.crosstalkDb - 6)
  expect(crosstalkDb).toBeLessThan(caution.crosstalkDb + 12)
})

test('two coils take what the plan says off speech and off ringing, of the rider and of the ridden', () => {
  const [without, with_] = [reported({ voiceDb: 0, ringDb: 1e-9 }), reported({ voiceDb: 0.7, ringDb: 1.5 })]
  for (const k of [0, 1, 2]) {
    const [plain, coiled] = [without.circuits[k]!, with_.circuits[k]!]
    expect(coiled.voice[0]!.lossDb - plain.voice[0]!.lossDb).toBeCloseTo(1.4, 9)
    expect(coiled.ringing[0]!.volts / plain.ringing[0]!.volts).toBeCloseTo(10 ** (-3 / 20), 8)
  }
})
