import { ringerOfEquivalents } from './ringer-equivalent'
import type { Sources } from './sources'
import type { TelephoneSet } from './telephone-set'

const COMMON_SOURCES: Sources = {
  'offHook.dcOhms': '200 Ω typical, from memory; a gateway data sheet allows for 430 Ω at most.',
  'offHook.acOhms': 'From memory: 600 to 900 Ω.',
  'offHook.minMA': '20 mA: ANSI T1.401 and network practice, from memory.',
  'ringer.ohms': 'One ringer equivalent of type A is 7000 Ω at 20 Hz (47 CFR 68.312, TIA-968).',
  'ringer.microF': 'One ringer equivalent as 6930 Ω and 8 µF in series: the older definition.',
  'ringer.minVolts': '40 V: the least of the ringing tables of TIA-968.',
  maxLossDb:
    '10 to 25 dB between subscribers is desirable (Fundamental transmission planning of telephone networks, 1940).',
}

const RINGER_SOURCE = 'ringer by 47 CFR 68.312 and TIA-968; the rest from memory'

/** Sets fed over the line. */
export const COMMON_SETS: readonly TelephoneSet[] = [
  {
    id: 'common-1-ren',
    name: 'Common-battery set, 1 ringer equivalent',
    talk: 'common',
    offHook: { dcOhms: 200, acOhms: 600, minMA: 20 },
    ringer: ringerOfEquivalents(1, 40),
    maxLossDb: 25,
    source: RINGER_SOURCE,
    sources: COMMON_SOURCES,
  },
  {
    id: 'common-long-line',
    name: 'Common-battery set for the longest loops, 1 ringer equivalent',
    talk: 'common',
    offHook: { dcOhms: 430, acOhms: 900, minMA: 20 },
    ringer: ringerOfEquivalents(1, 40),
    maxLossDb: 25,
    source: RINGER_SOURCE,
    sources: {
      ...COMMON_SOURCES,
      'offHook.dcOhms': '430 Ω, the most that a gateway data sheet allows for.',
    },
  },
  {
    id: 'common-carbon',
    name: 'Old common-battery set with carbon transmitter',
    talk: 'common',
    offHook: { dcOhms: 150, acOhms: 600, minMA: 23 },
    ringer: { ohms: 4500, henries: 35, microF: 0.5, minVolts: 40 },
    maxLossDb: 25,
    source: 'from memory',
    sources: {
      ...COMMON_SOURCES,
      'offHook.dcOhms': 'From memory.',
      'offHook.minMA': '23 mA for carbon transmitters: network practice, from memory.',
      'ringer.ohms': 'From memory: coil and core loss together.',
      'ringer.henries': 'From memory.',
      'ringer.microF': '0.4 to 0.5 µF: a museum page after a technical manual has 0.47 µF.',
    },
  },
  {
    id: 'common-electronic',
    name: 'Low-load electronic set, 0.3 ringer equivalent',
    talk: 'common',
    offHook: { dcOhms: 250, acOhms: 600, minMA: 15 },
    ringer: ringerOfEquivalents(0.3, 35),
    maxLossDb: 28,
    source: 'ringer derived from 47 CFR 68.312; the rest from memory',
    sources: {
      ...COMMON_SOURCES,
      'offHook.dcOhms': 'From memory.',
      'offHook.minMA': 'From memory: most electronic sets speak from 15 mA on.',
      'ringer.ohms': 'Derived: 0.3 of the ringer equivalent of 47 CFR 68.312.',
      'ringer.microF': 'Derived: 0.3 of 8 µF.',
      'ringer.minVolts': 'From memory: tone ringers start a little below 40 V.',
      maxLossDb: 'From memory: an electronic set hears about 3 dB more than a carbon set.',
    },
  },
  {
    id: 'common-european-25',
    name: 'Old European common-battery set, 25 Hz bell',
    talk: 'common',
    offHook: { dcOhms: 200, acOhms: 600, minMA: 20 },
    ringer: { ohms: 1800, microF: 1, minVolts: 25 },
    maxLossDb: 25,
    source:
      'ringer of 1800 Ω and 1 µF (encyclopaedia article on the ringer equivalence); the rest from memory',
    sources: {
      ...COMMON_SOURCES,
      'ringer.ohms': '1800 Ω: the older European ringer, as an encyclopaedia gives it.',
      'ringer.microF': '1 µF: the older European ringer, as an encyclopaedia gives it.',
      'ringer.minVolts': 'From memory: 25 V at 25 Hz.',
    },
  },
  {
    id: 'common-european-high',
    name: 'Newer European set, bell above 16 kΩ',
    talk: 'common',
    offHook: { dcOhms: 250, acOhms: 600, minMA: 18 },
    ringer: { ohms: 15000, microF: 0.8, minVolts: 30 },
    maxLossDb: 25,
    source: 'ringer above 16 kΩ at 25 Hz (ETSI, 2003, as quoted); the rest from memory',
    sources: {
      ...COMMON_SOURCES,
      'offHook.dcOhms': 'From memory.',
      'offHook.minMA': 'From memory.',
      'ringer.ohms': 'Derived: with the capacitor, more than 16 kΩ at 25 Hz (ETSI, 2003, as quoted).',
      'ringer.microF': 'From memory.',
      'ringer.minVolts': 'From memory.',
    },
  },
  {
    id: 'common-no-bell',
    name: "Lineman's test set, no bell",
    talk: 'common',
    offHook: { dcOhms: 200, acOhms: 600, minMA: 20 },
    maxLossDb: 25,
    source: 'from memory',
    sources: COMMON_SOURCES,
  },
  {
    id: 'crank-on-common',
    name: 'Crank set switched to common battery',
    talk: 'common',
    offHook: { dcOhms: 100, acOhms: 600, minMA: 15 },
    ringer: { ohms: 1600, henries: 40, microF: 2, minVolts: 16 },
    maxLossDb: 28,
    source: 'capacitor of 2 µF in the common-battery position (a museum page after a technical manual)',
    sources: {
      'offHook.dcOhms': 'From memory.',
      'offHook.acOhms': 'From memory.',
      'offHook.minMA':
        'From memory: the line current only signals the board, the transmitter keeps its own battery.',
      'ringer.ohms': 'Bridging ringer of 1600 Ω: an old correspondence textbook on telephone sets, p. 66.',
      'ringer.henries': 'From memory.',
      'ringer.microF':
        '1.9 to 2 µF in series in the common-battery position only: a museum page after a technical manual.',
      'ringer.minVolts': 'From memory: 2 to 4 mA move the armature.',
      maxLossDb: 'From memory.',
    },
  },
]
