import { inSeries } from './cell'
import { LEAD_ACID_12_VOLT } from './cells-rechargeable'
import { allowance, dataSheet, derived, derivedOnMemory, fromMemory, read, type Sources } from './sources'
import { batterySources, SMALL_LAMP } from './supplies-series'
import type { Supply } from './supply'
import {
  BATTERY_SPREAD,
  FEED_SPREAD,
  FEED_SPREAD_SOURCES,
  LED,
  LED_SOURCES,
  LED_SPREAD,
  LIMIT_SPREAD,
  LIMIT_SPREAD_SOURCES,
  RING_SPREAD,
  RING_SPREAD_SOURCES,
} from './supply-spread'

export const FEED_OHMS = fromMemory('2 × 200 Ω of feed coils: network practice, from memory.')
const LOAD_LIMIT = read('5 ringer equivalents: 47 CFR 68.312 and TIA-968.')
export const FORTY_EIGHT = read('48 V: public standard, as a tutorial on telephones (1985) gives it.')
const TWENTY_HZ = read('20 Hz: 47 CFR 68.312, type A.')

export const RINGING_SOURCES: Sources = {
  'ring.volts': fromMemory('84 to 104 V rms at the office; 86 V is the usual nominal figure: from memory.'),
  'ring.hz': TWENTY_HZ,
  'ring.ohms': fromMemory('400 to 600 Ω of lamp or resistor, from memory.'),
  'ring.maxLoad': LOAD_LIMIT,
  ...RING_SPREAD_SOURCES,
}

export const TWO_BATTERIES = inSeries(LEAD_ACID_12_VOLT, 2)
export const TWO_SOURCES: Sources = { ...batterySources(LEAD_ACID_12_VOLT, 2), ...FEED_SPREAD_SOURCES }
export const twoBatteriesKg = 2 * LEAD_ACID_12_VOLT.kg

/** The unit on two lead-acid batteries through an inverter for its mains adapter. */
export const BATTERY_BEHIND = {
  volts: TWO_BATTERIES.volts,
  ampHours: TWO_BATTERIES.ampHours,
  efficiencyPct: 80,
  cell: TWO_BATTERIES.cell,
}
export const BEHIND_SOURCES: Sources = {
  'fedBy.volts': derived('Two sealed lead-acid batteries of 12 V.'),
  'fedBy.ampHours': dataSheet('7 Ah by the name of the battery, over 20 hours.'),
  'fedBy.efficiencyPct': allowance('Allowance: a small converter or inverter at a light load.'),
}

/** A line circuit that holds its current steady, with ringing. */
const electronicFeed = (id: string, maxMA: number, use: string): Supply => ({
  id,
  name: `Electronic line circuit, ${maxMA} mA, ${use}`,
  kind: 'feed',
  volts: 48,
  ohms: 100,
  maxMA,
  offHookMA: 9,
  ring: { volts: 60, hz: 20, ohms: 200, maxLoad: 3 },
  powerW: { idle: 1.5, talk: 3, ring: 5 },
  fedBy: BATTERY_BEHIND,
  kg: 0.5,
  source:
    'short-loop line circuits: data sheets of line interface circuits and gateways; the rest from memory',
  sources: {
    volts: dataSheet('44 to 51 V open: data sheet of a ringing line interface circuit (2001), table 11.'),
    ohms: derivedOnMemory(
      '50 Ω of feed: data sheet of a ringing line interface circuit (2001), table 11; and 2 × 25 Ω of protection, from memory.',
    ),
    maxMA: dataSheet(
      '25 or 40 mA, chosen by a pin: data sheet of a ringing line interface circuit (2001), table 11.',
    ),
    offHookMA: dataSheet(
      'Set between 5 and 9 mA: data sheet of another line interface circuit; the upper end is taken.',
    ),
    'ring.volts': dataSheet('55 to 80 V rms: gateway data sheets.'),
    'ring.hz': TWENTY_HZ,
    'ring.ohms': fromMemory('From memory: protection resistors and the current limit of the circuit.'),
    'ring.maxLoad': fromMemory('From memory: 3 to 5.'),
    powerW: fromMemory('From memory: a gateway of one or two ports.'),
    ...BEHIND_SOURCES,
    kg: allowance('Allowance: the box alone.'),
    ...FEED_SPREAD_SOURCES,
    ...RING_SPREAD_SOURCES,
    ...LIMIT_SPREAD_SOURCES,
    'spread.powerW': allowance('Allowance: units differ by a factor of two.'),
  },
  spread: {
    ...FEED_SPREAD,
    ...RING_SPREAD,
    ...LIMIT_SPREAD,
    offHookMA: 30,
    'powerW.idle': 100,
    'powerW.talk': 50,
    'powerW.ring': 50,
  },
})

/** Supplies bridged across the pair. */
export const FEEDS: readonly Supply[] = [
  {
    id: 'feed-48',
    name: '48 V feed with ringing',
    kind: 'feed',
    volts: 48,
    ohms: 400,
    offHookMA: 15,
    ring: { volts: 86, hz: 20, ohms: 450, maxLoad: 5 },
    kg: 4,
    source: 'network practice, from memory; 5 ringer equivalents by 47 CFR 68.312',
    sources: {
      volts: FORTY_EIGHT,
      ohms: FEED_OHMS,
      offHookMA: fromMemory('10 to 20 mA, from memory.'),
      kg: allowance('Allowance: a power unit for 48 V and a ringing machine, without a battery.'),
      ...FEED_SPREAD_SOURCES,
      ...RINGING_SOURCES,
    },
    spread: { ...FEED_SPREAD, ...RING_SPREAD, offHookMA: 30 },
  },
  {
    id: 'feed-24',
    name: '24 V feed of a small manual board, no ringing',
    kind: 'feed',
    ...TWO_BATTERIES,
    ohms: 100,
    kg: twoBatteriesKg,
    source: 'small manual boards on two lead-acid batteries, from memory',
    sources: { ...TWO_SOURCES, ohms: fromMemory('2 × 50 Ω of feed coils, from memory.') },
    spread: { ...BATTERY_SPREAD, ...FEED_SPREAD },
  },
  {
    id: 'feed-24-lamp',
    name: '24 V lead-acid battery through a line lamp',
    kind: 'feed',
    ...TWO_BATTERIES,
    ohms: 20,
    indicator: SMALL_LAMP.value,
    kg: twoBatteriesKg,
    source: 'from memory',
    sources: {
      ...TWO_SOURCES,
      ohms: fromMemory('From memory: the lamp does the work of feed resistors.'),
      ...SMALL_LAMP.sources,
    },
    spread: { ...BATTERY_SPREAD, ...FEED_SPREAD, ...SMALL_LAMP.spread },
  },
  {
    id: 'feed-12-led',
    name: '12 V lead-acid battery as a feed, with an LED',
    kind: 'feed',
    ...inSeries(LEAD_ACID_12_VOLT, 1),
    ohms: 50,
    indicator: LED,
    kg: LEAD_ACID_12_VOLT.kg,
    source: 'from memory; red LED of 2.0 V at 20 mA by a published table',
    sources: {
      ...batterySources(LEAD_ACID_12_VOLT, 1),
      ...FEED_SPREAD_SOURCES,
      ohms: fromMemory('2 × 25 Ω of feed resistors, from memory.'),
      ...LED_SOURCES,
    },
    spread: { ...BATTERY_SPREAD, ...FEED_SPREAD, ...LED_SPREAD },
  },
  electronicFeed('feed-electronic-25', 25, 'for one set off hook at a time'),
  electronicFeed('feed-electronic-50', 50, 'for two sets on one pair'),
  {
    id: 'feed-european-25',
    name: '60 V feed with 25 Hz ringing, old European',
    kind: 'feed',
    volts: 60,
    ohms: 500,
    offHookMA: 15,
    ring: { volts: 75, hz: 25, ohms: 500, maxLoad: 3 },
    kg: 4,
    source: '60 to 90 V at 25 Hz (telephone tutorial); the rest from memory',
    sources: {
      volts: fromMemory('From memory.'),
      ohms: fromMemory('2 × 250 Ω of feed relay, from memory.'),
      offHookMA: fromMemory('10 to 20 mA, from memory.'),
      'ring.volts': read('60 to 90 V at 25 Hz in Europe: a telephone tutorial (1985).'),
      'ring.hz': read('25 Hz in Europe: a telephone tutorial (1985).'),
      'ring.ohms': fromMemory('From memory.'),
      'ring.maxLoad': fromMemory('From memory.'),
      kg: allowance('Allowance: a power unit for 60 V and a ringing machine, without a battery.'),
      ...FEED_SPREAD_SOURCES,
      ...RING_SPREAD_SOURCES,
    },
    spread: { ...FEED_SPREAD, ...RING_SPREAD, offHookMA: 30 },
  },
]
