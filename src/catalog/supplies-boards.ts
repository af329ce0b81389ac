import { allowance, derived, fromMemory, practice, read, type Sources, type Spread } from './sources'
import { BATTERY_BEHIND, BEHIND_SOURCES, twoBatteriesKg } from './supplies-feed'
import type { Supply } from './supply'

/** What falls, or lights, at the board when a line rings. */
const SIGNALS = {
  drops: {
    words: 'drops',
    drop: { ohms: 600, henries: 5, minVolts: 10 },
    ohms: fromMemory('Coils of shutter drops are wound to 500 to 1000 Ω, from memory.'),
    more: {
      'drop.henries': fromMemory('About as much reactance as resistance at 20 Hz, from memory.'),
      'drop.minVolts': fromMemory('A drop falls with some 10 mA, from memory.'),
    },
  },
  lamps: {
    words: 'lamps',
    drop: { ohms: 3000, microF: 1, minVolts: 15 },
    ohms: fromMemory('A ringing detector behind a capacitor; some thousand Ω, from memory.'),
    more: {
      'drop.microF': fromMemory('0.5 to 2 µF before ring-up relays and detectors, from memory.'),
      'drop.minVolts': fromMemory('From memory: detectors are made for 15 to 25 V and more.'),
    },
  },
} as const

const HAND = { volts: 80, hz: 20, ohms: 500 }
const FROM_BATTERY = { volts: 75, hz: 20, ohms: 400 }

const NO_CURRENT = derived('None: a board for sets with batteries of their own sends no direct current.')

/** How lines are joined, and what that is known by. */
const JOINED = {
  /** A cord for each line, plugged into the jack of another. */
  monocord: {
    words: 'a cord for each line',
    insertionDb: 0.2,
    calls: practice('A cord for each line, two lines in each call.'),
  },
  cords: {
    words: 'pairs of cords',
    insertionDb: 0.3,
    calls: read(
      '50 lines with 8 pairs of cords and 100 with 15 to 17: bulletins of private branch boards; here one pair for three lines.',
    ),
  },
  keys: {
    words: 'keys without cords',
    insertionDb: 0.2,
    calls: read(
      '3 connecting circuits for 8 lines (a postal leaflet on a cordless board), 7 for 25 (a maker’s bulletin of 1964).',
    ),
  },
} as const

interface Make {
  readonly lines: number
  readonly signal: keyof typeof SIGNALS
  readonly joined: keyof typeof JOINED
  readonly calls: number
  readonly ring: 'hand' | 'battery'
  readonly kg: number
  readonly mass?: Sources[string]
}

const SPREAD: Spread = {
  'drop.ohms': 30,
  'drop.minVolts': 40,
  'generator.volts': 10,
  'generator.ohms': 40,
  insertionDb: 60,
}

/** A hand-worked board for local-battery sets. */
function board({ lines, signal, joined, calls, ring, kg, mass }: Make): Supply {
  const { words, drop, ohms, more } = SIGNALS[signal]
  const way = JOINED[joined]
  const byHand = ring === 'hand'
  return {
    id: `board-${lines}-${joined}-${signal}`,
    name: `Board of ${lines} lines: ${words}, ${way.words}, ${byHand ? 'hand generator' : 'ringing from a battery'}`,
    kind: 'board',
    volts: 0,
    ohms: 0,
    ports: lines,
    callsAtOnce: calls,
    drop,
    generator: byHand ? HAND : FROM_BATTERY,
    insertionDb: way.insertionDb,
    ...(!byHand && { powerW: { idle: 0.1, talk: 0.3, ring: 8 }, fedBy: BATTERY_BEHIND }),
    kg: kg + (byHand ? 0 : twoBatteriesKg),
    source: 'boards for field and small-office use; electrical figures from memory',
    sources: {
      volts: NO_CURRENT,
      ohms: NO_CURRENT,
      ports: derived('By the name of the board.'),
      callsAtOnce: way.calls,
      'drop.ohms': ohms,
      ...more,
      'generator.volts': byHand
        ? fromMemory('75 to 90 V by hand, from memory; an encyclopedia has 50 to 100 V.')
        : fromMemory('48 to 75 V from electronic ringing, 75 to 100 V from vibrators: from memory.'),
      'generator.hz': byHand
        ? fromMemory('16 to 20 Hz, from memory.')
        : read('20 Hz: 47 CFR 68.312, type A.'),
      'generator.ohms': fromMemory('250 to 600 Ω, from memory.'),
      insertionDb: fromMemory('Some tenths of a dB of contacts and coils across the cord, from memory.'),
      ...(!byHand && {
        powerW: allowance('Allowance: next to nothing while it waits, a converter for ringing.'),
        ...BEHIND_SOURCES,
      }),
      kg: mass ?? allowance('Allowance: half a kilogram for each line, and the case.'),
      spread: allowance('Allowance: coils, springs and hands differ.'),
    },
    spread: SPREAD,
  }
}

const POSTAL_KG = read('12 lb without a battery: a postal leaflet on a cordless board of 8 lines.')

/** Boards of 4 to 30 lines. */
export const BOARDS: readonly Supply[] = [
  board({ lines: 4, signal: 'drops', joined: 'keys', calls: 2, ring: 'hand', kg: 4 }),
  board({ lines: 6, signal: 'drops', joined: 'monocord', calls: 3, ring: 'hand', kg: 7 }),
  board({ lines: 8, signal: 'lamps', joined: 'keys', calls: 3, ring: 'battery', kg: 5.4, mass: POSTAL_KG }),
  board({ lines: 12, signal: 'drops', joined: 'monocord', calls: 6, ring: 'hand', kg: 14 }),
  board({ lines: 12, signal: 'lamps', joined: 'monocord', calls: 6, ring: 'battery', kg: 12 }),
  board({ lines: 20, signal: 'drops', joined: 'cords', calls: 7, ring: 'hand', kg: 30 }),
  board({ lines: 25, signal: 'drops', joined: 'keys', calls: 7, ring: 'battery', kg: 20 }),
  board({ lines: 30, signal: 'drops', joined: 'cords', calls: 10, ring: 'hand', kg: 40 }),
]
