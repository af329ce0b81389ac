import { inSeries, LEAD_ACID_12_VOLT } from './cells'
import type { Sources } from './sources'
import type { Supply } from './supply'

const FEED_OHMS = '2 × 200 Ω of feed coils: network practice, from memory.'
const LOAD_LIMIT = '5 ringer equivalents: 47 CFR 68.312 and TIA-968.'

const RINGING_SOURCES: Sources = {
  'ring.volts': '84 to 104 V rms at the office, from memory; 86 V is the usual nominal figure, from memory.',
  'ring.hz': '20 Hz: 47 CFR 68.312, type A.',
  'ring.ohms': '400 to 600 Ω of lamp or resistor, from memory.',
  'ring.maxLoad': LOAD_LIMIT,
}

const { sources: battery } = LEAD_ACID_12_VOLT
const TWO_BATTERIES = inSeries(LEAD_ACID_12_VOLT, 2)
const BATTERY_SOURCES = {
  volts: `Sealed lead-acid battery: ${battery.volts}`,
  endVolts: `Sealed lead-acid battery: ${battery.endVolts}`,
  ampHours: `Sealed lead-acid battery: ${battery.ampHours}`,
}

/** A line circuit that holds its current steady, with ringing. */
const electronicFeed = (id: string, maxMA: number, use: string): Supply => ({
  id,
  name: `Electronic line circuit, ${maxMA} mA, ${use}`,
  kind: 'feed',
  volts: 48,
  ohms: 100,
  maxMA,
  ring: { volts: 60, hz: 20, ohms: 200, maxLoad: 3 },
  source: 'short-loop line circuits: 55 to 80 V of ringing by gateway data sheets; the rest from memory',
  sources: {
    volts: 'From memory.',
    ohms: 'From memory.',
    maxMA: 'From memory: 20 to 25 mA a set is usual.',
    'ring.volts': '55 to 80 V rms: gateway data sheets.',
    'ring.hz': '20 Hz: 47 CFR 68.312, type A.',
    'ring.ohms': 'From memory.',
    'ring.maxLoad': 'From memory: 3 to 5.',
  },
})

/** Supplies bridged across the pair, and the ringdown units that feed two lines and ring them. */
export const FEEDS: readonly Supply[] = [
  {
    id: 'feed-48',
    name: '48 V feed with ringing',
    kind: 'feed',
    volts: 48,
    ohms: 400,
    ring: { volts: 86, hz: 20, ohms: 450, maxLoad: 5 },
    source: 'network practice, from memory; 5 ringer equivalents by 47 CFR 68.312',
    sources: {
      volts: '48 V: public standard, as a tutorial on telephones (1985) gives it.',
      ohms: FEED_OHMS,
      ...RINGING_SOURCES,
    },
  },
  {
    id: 'feed-24',
    name: '24 V feed of a small manual board, no ringing',
    kind: 'feed',
    ...TWO_BATTERIES,
    ohms: 100,
    source: 'small manual boards on two lead-acid batteries, from memory',
    sources: { ...BATTERY_SOURCES, ohms: 'From memory: 2 × 50 Ω of feed coils.' },
  },
  {
    id: 'feed-24-lamp',
    name: '24 V lead-acid battery through a line lamp',
    kind: 'feed',
    ...TWO_BATTERIES,
    ohms: 20,
    indicator: { forwardVolts: 0, ohms: 200 },
    source: 'from memory',
    sources: {
      ...BATTERY_SOURCES,
      ohms: 'From memory: the lamp does the work of feed resistors.',
      indicator: 'Small 12 V lamp, 60 mA and 200 Ω when hot, from memory; cold it has a tenth of that.',
    },
  },
  {
    id: 'feed-12-led',
    name: '12 V lead-acid battery as a feed, with an LED',
    kind: 'feed',
    ...inSeries(LEAD_ACID_12_VOLT, 1),
    ohms: 50,
    indicator: { forwardVolts: 2, ohms: 10 },
    source: 'from memory; red LED of 2.0 V at 20 mA by a published table',
    sources: {
      ...BATTERY_SOURCES,
      ohms: 'From memory: 2 × 25 Ω of feed resistors.',
      indicator:
        'Red LED, 2.0 V at 20 mA (1.8 to 2.2 V): a published table of LED colours; its slope from memory.',
    },
  },
  electronicFeed('feed-electronic-25', 25, 'for one set off hook at a time'),
  electronicFeed('feed-electronic-50', 50, 'for two sets on one pair'),
  {
    id: 'feed-european-25',
    name: '60 V feed with 25 Hz ringing, old European',
    kind: 'feed',
    volts: 60,
    ohms: 500,
    ring: { volts: 75, hz: 25, ohms: 500, maxLoad: 3 },
    source: '60 to 90 V at 25 Hz (telephone tutorial); the rest from memory',
    sources: {
      volts: 'From memory.',
      ohms: '2 × 250 Ω of feed relay, from memory.',
      'ring.volts': '60 to 90 V at 25 Hz in Europe: a telephone tutorial.',
      'ring.hz': '25 Hz in Europe: a telephone tutorial.',
      'ring.ohms': 'From memory.',
      'ring.maxLoad': 'From memory.',
    },
  },
  {
    id: 'ringdown-24',
    name: 'Electronic ringdown unit, 24 V',
    kind: 'ringdown',
    ...TWO_BATTERIES,
    ohms: 200,
    maxMA: 25,
    ring: { volts: 70, hz: 20, ohms: 600, maxLoad: 3 },
    insertionDb: 0.5,
    source: '48 to 75 V and 20 to 25 Hz typical, from memory',
    sources: {
      ...BATTERY_SOURCES,
      ohms: 'From memory.',
      maxMA: 'From memory.',
      ring: 'From memory: 48 to 75 V at 20 to 25 Hz behind a few hundred ohms.',
      insertionDb: 'From memory: coupling transformer or capacitors.',
    },
  },
  {
    id: 'ringdown-48',
    name: 'Ringdown unit, 48 V',
    kind: 'ringdown',
    volts: 48,
    ohms: 400,
    ring: { volts: 86, hz: 20, ohms: 450, maxLoad: 5 },
    insertionDb: 1,
    source: 'network practice, from memory',
    sources: {
      volts: '48 V: public standard, as a tutorial on telephones (1985) gives it.',
      ohms: FEED_OHMS,
      insertionDb: 'From memory: coupling transformer.',
      ...RINGING_SOURCES,
    },
  },
]
