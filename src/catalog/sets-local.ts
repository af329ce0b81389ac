import type { Sources } from './sources'
import type { Ringer, TelephoneSet } from './telephone-set'

const CRANK = { volts: 80, hz: 20, ohms: 500 }

const CRANK_SOURCES: Sources = {
  'offHook.dcOhms': 'Secondary of the induction coil and receiver in series, from memory.',
  'offHook.acOhms': 'From memory: sets are built for lines of about 600 Ω.',
  'offHook.minMA': 'None: the transmitter has a battery of its own.',
  'generator.volts': '75 to 90 V open circuit, from memory; 50 to 100 V in encyclopaedias.',
  'generator.hz':
    'A crank at 200 turns a minute, geared 5 to 1, gives 16.7 Hz (Cyclopedia of Telephony and Telegraphy, vol. 1, ch. VIII); 20 Hz is the nominal figure.',
  'generator.ohms': '250 to 600 Ω, from memory.',
  'ringer.ohms':
    'Bridging ringers of 1000 and 1600 Ω: an old correspondence textbook on telephone sets, p. 66; 2500 Ω for heavily loaded lines, from memory.',
  'ringer.henries': 'From memory: chosen to give the impedance usual at 20 Hz.',
  'ringer.minVolts': 'From memory: 2 to 4 mA move the armature.',
  maxLossDb:
    '30 dB, the planning limit between local-battery sets, from memory; derived from the old commercial limit (Cyclopedia, vol. 1, table I), speech still passes at 35 dB.',
}

/** A local-battery crank set with a bridging ringer, named by the direct-current resistance of its coils. */
const crankSet = (ringer: Ringer): TelephoneSet => ({
  id: `crank-${ringer.ohms}`,
  name: `Crank set, ${ringer.ohms} Ω ringer`,
  talk: 'local',
  offHook: { dcOhms: 100, acOhms: 600, minMA: 0 },
  ringer,
  generator: CRANK,
  maxLossDb: 30,
  source: 'bridging ringer of an old correspondence textbook on telephone sets; the rest from memory',
  sources: CRANK_SOURCES,
})

const RINGER_1000: Ringer = { ohms: 1000, henries: 20, minVolts: 12 }
const RINGER_1600: Ringer = { ohms: 1600, henries: 40, minVolts: 16 }
const RINGER_2500: Ringer = { ohms: 2500, henries: 70, minVolts: 22 }

const soundPoweredLoss =
  'Derived: 4 miles of wet WD-1, the range that a page on TM 11-5805-243-13 gives, at 2.5 dB per mile.'

/** Sets with a battery of their own, or none. */
export const LOCAL_SETS: readonly TelephoneSet[] = [
  ...[RINGER_1000, RINGER_1600, RINGER_2500].map(crankSet),
  {
    id: 'crank-electronic',
    name: 'Field set with electronic ringing and a tone bell',
    talk: 'local',
    offHook: { dcOhms: 150, acOhms: 600, minMA: 0 },
    ringer: { ohms: 15000, microF: 1, minVolts: 20 },
    generator: { volts: 60, hz: 25, ohms: 1000 },
    maxLossDb: 33,
    source: 'from memory',
    sources: {
      offHook: 'From memory.',
      ringer: 'From memory: a tone bell loads the line little.',
      generator: 'From memory: a converter on the talking battery, 48 to 75 V at 20 to 25 Hz.',
      maxLossDb: 'From memory: an amplified receiver hears about 3 dB more than a carbon set.',
    },
  },
  {
    id: 'sound-powered',
    name: 'Sound-powered set with hand generator',
    talk: 'sound',
    offHook: { dcOhms: 60, acOhms: 600, minMA: 0 },
    ringer: RINGER_1000,
    generator: { volts: 65, hz: 20, ohms: 700 },
    maxLossDb: 10,
    source: 'range of 4 miles on WD-1 (a page on TM 11-5805-243-13); the rest from memory',
    sources: {
      'offHook.dcOhms': 'From memory.',
      'offHook.acOhms': 'From memory.',
      'offHook.minMA': 'None: the voice powers it.',
      ringer: 'From memory.',
      generator: 'From memory: a squeezed or cranked generator, weaker than that of a crank set.',
      maxLossDb: soundPoweredLoss,
    },
  },
  {
    id: 'sound-powered-plain',
    name: 'Sound-powered handset, called by voice or whistle',
    talk: 'sound',
    offHook: { dcOhms: 60, acOhms: 600, minMA: 0 },
    maxLossDb: 10,
    source: 'range of 4 miles on WD-1 (a page on TM 11-5805-243-13); the rest from memory',
    sources: {
      'offHook.dcOhms': 'From memory.',
      'offHook.acOhms': 'From memory.',
      'offHook.minMA': 'None: the voice powers it.',
      maxLossDb: soundPoweredLoss,
    },
  },
]
