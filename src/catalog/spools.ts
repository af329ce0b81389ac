import { METRES_PER_FOOT, METRES_PER_MILE } from '../units'

/** A length in which wire is made up, and what holds it. */
export interface Spool {
  readonly name: string
  /** Wire on it, m. */
  readonly lengthM: number
  /** Mass of the empty container, kg; unknown where absent. */
  readonly emptyKg?: number
  /** Ids of the wires that come so. */
  readonly wires: readonly string[]
  /** How it is carried. */
  readonly carriedBy: string
  readonly source: string
}

const FIELD_WIRE = ['wd-1a', 'w-110-b']
const LENGTHS = 'lengths: US Army Signal subcourse SS0440, table 1-1'

/** The reels, spools and dispensers that the program knows of its own. */
export const SPOOLS: readonly Spool[] = [
  {
    name: 'Spool DR-8',
    lengthM: METRES_PER_MILE / 4,
    emptyKg: 1.4,
    wires: ['wd-1a'],
    carriedBy: 'one person, hand reel unit RL-39',
    source: `${LENGTHS}; container from memory`,
  },
  {
    name: 'Dispenser MX-306',
    lengthM: METRES_PER_MILE / 2,
    emptyKg: 0.9,
    wires: ['wd-1a'],
    carriedBy: 'one person, by hand or on a pack board; not refilled in the field',
    source: `${LENGTHS}; filled 25 to 28 lb of which 24 lb are wire, from memory`,
  },
  {
    name: 'Reel RL-159/U or DR-4',
    lengthM: METRES_PER_MILE,
    emptyKg: 10,
    wires: [...FIELD_WIRE, 'wf-16'],
    carriedBy: 'two people on axle RL-27, or reeling machine RL-31',
    source: `${LENGTHS}; container from memory`,
  },
  {
    name: 'Reel DR-5',
    lengthM: 2.5 * METRES_PER_MILE,
    emptyKg: 20,
    wires: FIELD_WIRE,
    carriedBy: 'vehicle, reeling machine RL-31',
    source: `${LENGTHS}; container from memory`,
  },
  {
    name: 'Dispenser MX-6894/TT',
    lengthM: METRES_PER_MILE / 4,
    wires: ['wd-36'],
    carriedBy: 'one person; not refilled in the field',
    source: 'US Army Signal subcourse SS0440, table 1-1',
  },
  {
    name: 'Dispenser MX-6895/TT',
    lengthM: METRES_PER_MILE / 2,
    wires: ['wd-36'],
    carriedBy: 'one person; not refilled in the field',
    source: 'US Army Signal subcourse SS0440, table 1-1',
  },
  {
    name: 'Box of 1000 ft',
    lengthM: 1000 * METRES_PER_FOOT,
    emptyKg: 0.5,
    wires: [
      ...['copper-19', 'copper-20', 'copper-22', 'copper-23', 'copper-24', 'copper-26', 'drop-wire-18'],
      ...['network-24', 'network-24-two', 'network-cca-24', 'network-cca-24-two'],
    ],
    carriedBy: 'one person, by hand',
    source: 'common practice; mass from memory',
  },
  {
    name: 'Coil of 500 m',
    lengthM: 500,
    wires: ['fence-steel-2-5'],
    carriedBy: 'one person on a spinning jenny',
    source: 'common practice',
  },
  {
    name: 'Coil of 400 m',
    lengthM: 400,
    wires: ['fence-steel-1-6'],
    carriedBy: 'one person on a spinning jenny',
    source: 'common practice',
  },
  {
    name: 'Coil of 250 m',
    lengthM: 250,
    wires: ['fence-steel-4'],
    carriedBy: 'one person on a spinning jenny',
    source: 'a wire maker’s advertisement (1980): 25 kg of 4 mm are 253 m',
  },
  {
    name: 'Drum of 100 m',
    lengthM: 100,
    emptyKg: 0.3,
    wires: ['alarm-0-22', 'bell-wire-0-2'],
    carriedBy: 'one person, by hand',
    source: 'common practice; mass from memory',
  },
  {
    name: 'Spool of 500 ft',
    lengthM: 500 * METRES_PER_FOOT,
    emptyKg: 0.4,
    wires: ['speaker-16', 'speaker-18', 'speaker-22', 'lamp-cord-18', 'bell-wire-20'],
    carriedBy: 'one person, by hand',
    source: 'common practice; mass from memory',
  },
  {
    name: 'Spool of 100 ft',
    lengthM: 100 * METRES_PER_FOOT,
    emptyKg: 0.1,
    wires: ['speaker-16', 'speaker-18', 'speaker-22'],
    carriedBy: 'one person, by hand',
    source: 'common practice; mass from memory',
  },
]

/** The container usual for a wire's length: the one whose length differs by less than 1 %; `undefined` where none is known. */
export const spoolOf = (wire: string, lengthM: number): Spool | undefined =>
  SPOOLS.find((spool) => spool.wires.includes(wire) && Math.abs(spool.lengthM / lengthM - 1) < 0.01)
