import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { CircuitModel } from '../../src/budget/circuit-model'
import { circuitRows } from '../../src/budget/circuit-rows'
import { conditionsOf } from '../../src/budget/conditions'
import type { TelephoneSet } from '../../src/catalog/telephone-set'
import type { Wire } from '../../src/catalog/wire'
import { OHMS_ONLY, plainSet, rowOfSets } from '../reference/test-circuit'

const figure = (min: number, max: number) => fc.double({ min, max, noNaN: true })

const anyWire = (): fc.Arbitrary<Wire> =>
  fc.record({
    ...Object.fromEntries(Object.entries(OHMS_ONLY).map(([key, value]) => [key, fc.constant(value)])),
    loopOhmPerKm: figure(5, 400),
    nanoFPerKm: figure(1, 200),
    dryMicroSPerKm: figure(0, 200),
  }) as unknown as fc.Arbitrary<Wire>

/** A crank set whose bell is a plain resistor: no coil that could resonate with the wire. */
const anySet = (): fc.Arbitrary<TelephoneSet> =>
  fc
    .record({ bell: figure(500, 10_000), crank: figure(200, 900), ac: figure(200, 1200) })
    .map(({ bell, crank, ac }) =>
      plainSet({
        talk: 'local',
        offHook: { dcOhms: 200, acOhms: ac, minMA: 0 },
        ringer: { ohms: bell, minVolts: 20 },
        generator: { volts: 80, hz: 20, ohms: crank },
      }),
    )

const DRY = conditionsOf('dry', 20)
/** Digits that two reckonings share: the 100 GΩ to which all is referred stands at another station, and moves the eighth. */
const DIGITS = 7
const volts = (model: CircuitModel, lengthFactor = 1) =>
  circuitRows(model, { ...DRY, lengthFactor }).ringing.map((row) => row.volts)

describe('a circuit', () => {
  test('of two sets without coils never rings louder over more wire', () => {
    fc.assert(
      fc.property(
        anyWire(),
        anySet(),
        anySet(),
        figure(10, 20_000),
        figure(1, 5),
        (wire, a, b, wireM, more) => {
          const model = rowOfSets([a, b], wire, wireM)
          const [near, far] = [volts(model), volts(model, more)]
          for (const [k, less] of far.entries()) expect(less).toBeLessThanOrEqual(near[k]! * (1 + 1e-9))
        },
      ),
    )
  })

  test('makes no power: bells take no more than the crank gives', () => {
    fc.assert(
      fc.property(anyWire(), anySet(), anySet(), anySet(), figure(10, 20_000), (wire, a, b, c, wireM) => {
        const model = rowOfSets([a, b, c], wire, wireM)
        const rows = circuitRows(model, DRY).ringing.filter(({ from }) => from === 's0')
        const taken = rows.reduce((watts, row, k) => watts + row.volts ** 2 / [b, c][k]!.ringer!.ohms, 0)
        // The most that 80 V behind the crank's resistance can give: E² / 4R.
        expect(taken).toBeLessThanOrEqual(80 ** 2 / (4 * a.generator!.ohms))
      }),
    )
  })

  test('loses as much speech one way as the other, whichever end its stations are counted from', () => {
    fc.assert(
      fc.property(anyWire(), anySet(), anySet(), anySet(), figure(10, 20_000), (wire, a, b, c, wireM) => {
        const there = circuitRows(rowOfSets([a, b, c], wire, wireM), DRY).voice
        const back = circuitRows(rowOfSets([c, b, a], wire, wireM), DRY).voice
        const loss = (rows: typeof there, from: string, to: string) =>
          rows.find((row) => row.from === from && row.to === to)!.lossDb
        expect(loss(there, 's0', 's2')).toBeCloseTo(loss(back, 's0', 's2'), DIGITS)
        expect(loss(there, 's0', 's1')).toBeCloseTo(loss(back, 's2', 's1'), DIGITS)
      }),
    )
  })

  test('closed to a ring by wire without end is the tree that it was', () => {
    // s0 ── s1 ── s2, and a way from s2 back to s0 of 100 000 km: its own ends load the net, so it hangs on both trees as stubs.
    fc.assert(
      fc.property(anyWire(), anySet(), anySet(), anySet(), figure(10, 20_000), (wire, a, b, c, wireM) => {
        const tree = rowOfSets([a, b, c], wire, wireM)
        const endless = { id: 'far', wire, wireM: 5e7, electrodeOhms: null }
        const stations = [...tree.stations, 'x', 'y']
        const stubs = {
          ...tree,
          stations,
          lines: [...tree.lines, { ...endless, from: 0, to: 3 }, { ...endless, id: 'off', from: 2, to: 4 }],
        }
        const ring = { ...tree, lines: [...tree.lines, { ...endless, wireM: 1e8, from: 2, to: 0 }] }
        // At 20 Hz even the best of these wires loses more than 25 Np over 50 000 km, so nothing comes round.
        for (const [k, one] of volts(stubs).entries()) expect(volts(ring)[k]! / one).toBeCloseTo(1, DIGITS)
      }),
    )
  })
})
