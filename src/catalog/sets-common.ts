import { ringerOfEquivalents } from './ringer-equivalent'
import { SET_SPREAD_SOURCES, setSpread } from './set-spread'
import { allowance, dataSheet, derived, fromMemory, read, type Sources } from './sources'
import type { TelephoneSet } from './telephone-set'

export const COMMON_SOURCES: Sources = {
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
export const ONE_EQUIVALENT = ringerOfEquivalents(1, 40)
export const fed = (ringer: TelephoneSet['ringer']) => setSpread(ringer, { fed: true })

/** Sets fed over the line that are a resistance to their battery. */
export const COMMON_SETS: readonly TelephoneSet[] = [
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
