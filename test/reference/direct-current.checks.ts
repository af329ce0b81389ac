import { callsFrom } from '../../src/budget/dc-call'
import { enduranceRows } from '../../src/budget/endurance'
import { terminalsOf } from '../../src/budget/terminals'
import { builtInSupply } from './built-in-entry'
import { checks } from './check'
import { DRY, OHMS_ONLY, plainSet, rowOfSets } from './test-circuit'

/** Current of one set off hook on a 48 V, 400 Ω feed at the far end of a loop of so many ohms. */
function loopMA(loopOhm: number, setOhm: number): number {
  const set = plainSet({ offHook: { dcOhms: setOhm, acOhms: 600, minMA: 20 } })
  const model = rowOfSets([set, set], OHMS_ONLY, loopOhm, builtInSupply('feed-48'))
  return callsFrom(model, DRY, terminalsOf(model, DRY, 0))([1]).mA[0]!
}

const resistanceDesign = checks(
  {
    source: {
      work: 'ANSI T1.401 and resistance design of subscriber loops',
      place: 'loop limits, from memory',
    },
    tolerancePct: 5,
    because: 'the limits are round ohms, with a set of 430 Ω allowed for',
  },
  [
    { what: 'current at the older limit of 1300 Ω', unit: 'mA', published: 23, computed: loopMA(1300, 430) },
    {
      what: 'current at the revised limit of 1500 Ω',
      unit: 'mA',
      published: 20,
      computed: loopMA(1500, 430),
    },
  ],
)

const rural = checks(
  {
    source: { work: '7 CFR 1755.522, from memory', place: 'design loop of 1900 Ω, set included' },
    tolerancePct: 5,
    because: 'a round figure for 20 mA at 48 V',
  },
  [{ what: 'current', unit: 'mA', published: 20, computed: loopMA(1900 - 200, 200) }],
)

const state = checks(
  {
    source: { work: 'South Carolina Code of Regulations 103-663.3', place: 'current at the protector' },
    tolerancePct: 0,
    because: 'the regulation is a bound',
    bound: 'at least',
  },
  [
    {
      what: 'current over 1500 Ω with a set of 430 Ω',
      unit: 'mA',
      published: 20,
      computed: loopMA(1500, 430),
    },
  ],
)

const usual = [
  ...checks(
    {
      source: {
        work: 'Network news posting by a switching engineer (1992)',
        place: 'current of a set: 20 to 80 mA',
      },
      tolerancePct: 0,
      because: 'a range',
    },
    [
      {
        what: 'longest loop, 1300 Ω, set of 430 Ω',
        unit: 'mA',
        published: 20,
        computed: loopMA(1300, 430),
        bound: 'at least',
      },
      {
        what: 'no loop at all, set of 200 Ω',
        unit: 'mA',
        published: 80,
        computed: loopMA(1e-6, 200),
        tolerancePct: 1,
        because: 'a set of 200 Ω right at the office takes 80 mA exactly',
      },
    ],
  ),
]

/** Days that eight D cells in one leg hold a call of so many milliamperes that never ends. */
function daysOfDCells(talkMA: number): number {
  const battery = builtInSupply('eight-d-cells')
  const setOhm = (battery.volts / (talkMA / 1000) - battery.ohms) / 2
  const set = plainSet({ offHook: { dcOhms: setOhm, acOhms: 600, minMA: 20 } })
  const use = { talkMinutesPerDay: 24 * 60, ringMinutesPerDay: 0, tempC: 20 }
  const { drain } = enduranceRows(rowOfSets([set, set], OHMS_ONLY, 1e-6, battery), DRY, use)[0]!
  return (drain!.ampHours * 1000) / drain!.talkMA / 24
}

const endurance = checks(
  {
    source: {
      work: 'Product specification of an alkaline D cell, LR20 (2009)',
      place: '18 Ah at 25 mA, day and night, at 20 °C to 0.8 V: 720 h',
    },
    tolerancePct: 0.01,
    because: 'the capacity is the catalog’s own figure; the drain and the days are reckoned',
    sameAsCode: true,
  },
  [{ what: 'days of a call of 25 mA', unit: 'd', published: 30, computed: daysOfDCells(25) }],
)

export const DIRECT_CURRENT_CHECKS = [...resistanceDesign, ...rural, ...state, ...usual, ...endurance]
