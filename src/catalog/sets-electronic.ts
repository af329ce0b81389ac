import { ringerOfEquivalents } from './ringer-equivalent'
import { COMMON_SOURCES, fed, ONE_EQUIVALENT } from './sets-common'
import { allowance, dataSheet, derived, derivedOnMemory, fromMemory, type Sources } from './sources'
import type { Ringer, TelephoneSet } from './telephone-set'

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

/** Sets fed over the line that keep a voltage of their own. */
export const ELECTRONIC_SETS: readonly TelephoneSet[] = [
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
