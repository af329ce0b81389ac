import { ringerOfEquivalents } from './ringer-equivalent'
import { SET_SPREAD_SOURCES, setSpread } from './set-spread'
import { allowance, dataSheet, derived, derivedOnMemory, fromMemory, read, type Sources } from './sources'
import type { Ringer, TelephoneSet } from './telephone-set'

const COMMON_SOURCES: Sources = {
  'offHook.dcOhms': fromMemory('200 Ω typical, from memory; a gateway data sheet allows for 430 Ω at most.'),
  'offHook.acOhms': fromMemory('From memory: 600 to 900 Ω.'),
  'offHook.minMA': fromMemory('20 mA: ANSI T1.401 and network practice, from memory.'),
  'ringer.ohms': read('One ringer equivalent of type A is 7000 Ω at 20 Hz (47 CFR 68.312, TIA-968).'),
  'ringer.microF': read(
    'One ringer equivalent as 6930 Ω and 8 µF in series: the older definition, as an encyclopaedia gives it.',
  ),
  'ringer.minVolts': read('40 V: the least of the ringing tables of TIA-968.'),
  maxLossDb: read(
    '10 to 25 dB between subscribers is desirable (Fundamental transmission planning of telephone networks, 1940, abstract).',
  ),
  kg: allowance('Allowance: a desk telephone with a bell has 1.5 to 2.5 kg.'),
  ...SET_SPREAD_SOURCES,
}

const RINGER_SOURCE = 'ringer by 47 CFR 68.312 and TIA-968; the rest from memory'
const ONE_EQUIVALENT = ringerOfEquivalents(1, 40)
const fed = (ringer: TelephoneSet['ringer']) => setSpread(ringer, { fed: true })

/** Sets fed over the line that are a resistance to their battery. */
const RESISTIVE: readonly TelephoneSet[] = [
  {
    id: 'common-1-ren',
    name: 'Common-battery set, 1 ringer equivalent',
    talk: 'common',
    offHook: { dcOhms: 200, acOhms: 600, minMA: 20 },
    ringer: ONE_EQUIVALENT,
    maxLossDb: 25,
    kg: 1.8,
    source: RINGER_SOURCE,
    sources: COMMON_SOURCES,
    spread: fed(ONE_EQUIVALENT),
  },
  {
    id: 'common-long-line',
    name: 'Common-battery set for the longest loops, 1 ringer equivalent',
    talk: 'common',
    offHook: { dcOhms: 430, acOhms: 900, minMA: 20 },
    ringer: ONE_EQUIVALENT,
    maxLossDb: 25,
    kg: 1.8,
    source: RINGER_SOURCE,
    sources: {
      ...COMMON_SOURCES,
      'offHook.dcOhms': dataSheet('430 Ω, the most that a gateway data sheet allows for.'),
    },
    spread: fed(ONE_EQUIVALENT),
  },
  {
    id: 'common-carbon',
    name: 'Old common-battery set with carbon transmitter',
    talk: 'common',
    offHook: { dcOhms: 150, acOhms: 600, minMA: 23 },
    ringer: { ohms: 4500, henries: 35, microF: 0.5, minVolts: 40 },
    maxLossDb: 25,
    kg: 2.3,
    source: 'from memory',
    sources: {
      ...COMMON_SOURCES,
      'offHook.dcOhms': fromMemory('From memory.'),
      'offHook.minMA': fromMemory('23 mA for carbon transmitters: network practice, from memory.'),
      'ringer.ohms': fromMemory('From memory: coil and core loss together.'),
      'ringer.henries': fromMemory('From memory.'),
      'ringer.microF': read('0.4 to 0.5 µF: a museum page after a technical manual has 0.47 µF.'),
    },
    spread: fed({ ohms: 4500, henries: 35, microF: 0.5, minVolts: 40 }),
  },
  {
    id: 'common-european-25',
    name: 'Old European common-battery set, 25 Hz bell',
    talk: 'common',
    offHook: { dcOhms: 200, acOhms: 600, minMA: 20 },
    ringer: { ohms: 1800, microF: 1, minVolts: 25 },
    maxLossDb: 25,
    kg: 2,
    source:
      'ringer of 1800 Ω and 1 µF (encyclopaedia article on the ringer equivalence); the rest from memory',
    sources: {
      ...COMMON_SOURCES,
      'ringer.ohms': read('1800 Ω: the older European ringer, as an encyclopaedia gives it.'),
      'ringer.microF': read('1 µF: the older European ringer, as an encyclopaedia gives it.'),
      'ringer.minVolts': fromMemory('From memory: 25 V at 25 Hz.'),
    },
    spread: fed({ ohms: 1800, microF: 1, minVolts: 25 }),
  },
  {
    id: 'common-no-bell',
    name: "Lineman's test set, no bell",
    talk: 'common',
    offHook: { dcOhms: 200, acOhms: 600, minMA: 20 },
    maxLossDb: 25,
    kg: 0.6,
    source: 'from memory',
    sources: { ...COMMON_SOURCES, kg: allowance('Allowance: a handset with clips.') },
    spread: fed(undefined),
  },
  {
    id: 'common-press-to-talk',
    name: 'Common-battery handset with a button to press while speaking, no bell',
    talk: 'common',
    offHook: { dcOhms: 150, acOhms: 900, speakAcOhms: 200, minMA: 20 },
    maxLossDb: 25,
    kg: 0.6,
    source: 'from memory',
    sources: {
      ...COMMON_SOURCES,
      'offHook.dcOhms': fromMemory('From memory: the transmitter with its button pressed.'),
      'offHook.acOhms': fromMemory('From memory: the receiver alone.'),
      'offHook.speakAcOhms': fromMemory('From memory: the carbon transmitter alone.'),
      kg: allowance('Allowance: a handset with clips.'),
    },
    spread: { ...fed(undefined), 'offHook.speakAcOhms': 40 },
  },
  {
    id: 'crank-on-common',
    name: 'Crank set switched to common battery',
    talk: 'common',
    offHook: { dcOhms: 100, acOhms: 600, minMA: 15 },
    ringer: { ohms: 1600, henries: 40, microF: 2, minVolts: 16 },
    maxLossDb: 28,
    kg: 4.14,
    source: 'capacitor of 2 µF in the common-battery position (a museum page after a technical manual)',
    sources: {
      'offHook.dcOhms': fromMemory('From memory.'),
      'offHook.acOhms': fromMemory('From memory.'),
      'offHook.minMA': fromMemory(
        'From memory: the line current only signals the board, the transmitter keeps its own battery.',
      ),
      'ringer.ohms': read(
        'Bridging ringer of 1600 Ω: an old correspondence textbook on telephone sets, p. 66.',
      ),
      'ringer.henries': fromMemory('From memory.'),
      'ringer.microF': read(
        '1.9 to 2 µF in series in the common-battery position only: a museum page after a technical manual.',
      ),
      'ringer.minVolts': fromMemory('From memory: 2 to 4 mA move the armature.'),
      maxLossDb: fromMemory('From memory.'),
      kg: derived('About 9.75 lb with battery: a collector’s page on TM 11-333; less two cells of 139 g.'),
      ...SET_SPREAD_SOURCES,
    },
    spread: fed({ ohms: 1600, henries: 40, microF: 2, minVolts: 16 }),
  },
]

const BRIDGE = 'two diodes of the bridge, 0.7 V each, from memory'
const SPEECH_CHIP = 'data sheet of a speech chip for electronic telephones (1994)'
const MODEM_CHIP = 'data sheet of a line-side chip for modems, rev. 1.0'
const TONE_SOURCE = derivedOnMemory(
  'A tone chip begins to sound at 17 to 21 V and 1.4 to 4.2 mA (its data sheet); behind a bridge, 2.2 kΩ and 1 µF (from memory) that is 27 to 38 V at 20 Hz: 35 V is taken.',
)

/** An electronic telephone: a speech chip behind a bridge, which keeps a voltage of its own whatever the current. */
function speechChipSet(set: {
  readonly id: string
  readonly name: string
  readonly ringer: Ringer
  readonly minMA?: number
  readonly maxLossDb?: number
  readonly kg: number
  readonly source: string
  readonly sources: Sources
}): TelephoneSet {
  const { ringer, minMA = 10, maxLossDb = 28 } = set
  return {
    id: set.id,
    name: set.name,
    talk: 'common',
    offHook: { dcOhms: 20, dropVolts: 5.6, acOhms: 600, minMA },
    ringer,
    maxLossDb,
    kg: set.kg,
    source: set.source,
    sources: {
      ...COMMON_SOURCES,
      'offHook.dcOhms': dataSheet(`20 Ω: ${SPEECH_CHIP}.`),
      'offHook.dropVolts': derivedOnMemory(`4.18 V of the regulator: ${SPEECH_CHIP}; and ${BRIDGE}.`),
      'offHook.minMA': dataSheet(`Works from 10 mA: ${SPEECH_CHIP}.`),
      maxLossDb: fromMemory('From memory: an electronic set hears about 3 dB more than a carbon set.'),
      ...(set.kg < 1 && { kg: allowance('Allowance: a light desk telephone.') }),
      'spread.offHook.dropVolts': dataSheet(
        `4.25 to 4.65 V about 4.45 at 15 mA: ${SPEECH_CHIP}; the bridge adds a little.`,
      ),
      ...set.sources,
    },
    spread: { ...fed(ringer), 'offHook.dropVolts': 7 },
  }
}

const CORDLESS = ringerOfEquivalents(0.2, 25)

const ELECTRONIC: readonly TelephoneSet[] = [
  speechChipSet({
    id: 'common-electronic',
    name: 'Low-load electronic set, 0.3 ringer equivalent',
    ringer: ringerOfEquivalents(0.3, 35),
    kg: 0.7,
    source: 'speech chip by its data sheet; ringer derived from 47 CFR 68.312; the rest from memory',
    sources: {
      'ringer.ohms': derived('0.3 of the ringer equivalent of 47 CFR 68.312.'),
      'ringer.microF': derived('0.3 of 8 µF.'),
      'ringer.minVolts': TONE_SOURCE,
    },
  }),
  speechChipSet({
    id: 'common-european-high',
    name: 'Newer European set, bell above 16 kΩ',
    ringer: { ohms: 15000, microF: 0.8, minVolts: 30 },
    minMA: 15,
    maxLossDb: 25,
    kg: 0.7,
    source:
      'ringer above 16 kΩ at 25 Hz (ETSI, 2003, as quoted); speech chip by its data sheet; the rest from memory',
    sources: {
      'offHook.minMA': fromMemory('15 mA, from memory; the chip alone works from 10 mA by its data sheet.'),
      'ringer.ohms': derived('With the capacitor, more than 16 kΩ at 25 Hz (ETSI, 2003, as quoted).'),
      'ringer.microF': fromMemory('From memory.'),
      'ringer.minVolts': fromMemory('From memory.'),
      maxLossDb: COMMON_SOURCES.maxLossDb!,
    },
  }),
  speechChipSet({
    id: 'desk-chirper',
    name: 'Desk telephone with an electronic chirper',
    ringer: ringerOfEquivalents(0.5, 35),
    kg: 0.7,
    source: 'speech chip and tone chip by their data sheets; the rest from memory',
    sources: {
      'ringer.ohms': fromMemory('Half a ringer equivalent, from memory: such sets print 0.3 to 0.8.'),
      'ringer.microF': derivedOnMemory('Half of 8 µF, as half an equivalent has it.'),
      'ringer.minVolts': TONE_SOURCE,
    },
  }),
  speechChipSet({
    id: 'desk-bell',
    name: 'Electronic desk telephone with a real bell, 1 ringer equivalent',
    ringer: ONE_EQUIVALENT,
    kg: 1.5,
    source: 'speech chip by its data sheet; ringer by 47 CFR 68.312 and TIA-968; the rest from memory',
    sources: {},
  }),
  {
    id: 'cordless-base',
    name: 'Cordless base (it needs a mains adapter of its own)',
    talk: 'common',
    offHook: { dcOhms: 50, dropVolts: 5, acOhms: 600, minMA: 10 },
    ringer: CORDLESS,
    maxLossDb: 28,
    kg: 0.6,
    source: `${MODEM_CHIP}: such chips stand in cordless bases too; the rest from memory`,
    sources: {
      ...COMMON_SOURCES,
      'offHook.dcOhms': derivedOnMemory(
        `30 Ω between 6.0 V at 20 mA and 9 V at 120 mA: ${MODEM_CHIP}, table 2; hook switch and coils about 20 Ω, from memory.`,
      ),
      'offHook.dropVolts': derived(
        `At most 6.0 V at 20 mA, less 20 mA through 50 Ω: ${MODEM_CHIP}, table 2.`,
      ),
      'offHook.minMA': dataSheet(`10 to 120 mA: ${MODEM_CHIP}, table 2.`),
      'ringer.ohms': dataSheet(`0.2 ringer equivalents: ${MODEM_CHIP}, table 2.`),
      'ringer.microF': derived('0.2 of 8 µF.'),
      'ringer.minVolts': dataSheet(
        `Sure to be noticed at 25 V rms, at 18 V with its other setting: ${MODEM_CHIP}, table 2.`,
      ),
      maxLossDb: fromMemory('From memory: an electronic set hears about 3 dB more than a carbon set.'),
      kg: allowance('Allowance: base and handset, with the adapter.'),
      'spread.offHook.dropVolts': allowance('Allowance: makers set such chips for each country.'),
      'spread.ringer.minVolts': dataSheet(`18 to 25 V: ${MODEM_CHIP}, table 2.`),
    },
    spread: { ...fed(CORDLESS), 'offHook.dropVolts': 20, 'ringer.minVolts': 20 },
  },
]

/** Sets fed over the line. */
export const COMMON_SETS: readonly TelephoneSet[] = [...RESISTIVE, ...ELECTRONIC]
