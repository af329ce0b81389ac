import type { Ringer, TelephoneSet } from './telephone-set'

/** Bell of one ringer equivalent: 6930 Ω and 8 µF in series, 7000 Ω at 20 Hz (TIA-968, 47 CFR 68.312). */
const ONE_RINGER_EQUIVALENT: Ringer = { ohms: 6930, microF: 8, minVolts: 40 }

const CRANK = { volts: 80, hz: 20, ohms: 500 }

const CRANK_SOURCES = {
  'offHook.dcOhms': 'Secondary of the induction coil and receiver in series, from memory.',
  'offHook.acOhms': 'From memory: sets are built for lines of about 600 Ω.',
  'offHook.minMA': 'None: the transmitter has a battery of its own.',
  'generator.volts': '75 to 90 V open circuit, from memory; 50 to 100 V in encyclopaedias.',
  'generator.hz':
    'Crank at 200 turns a minute geared 5 to 1 gives 16.7 Hz (Cyclopedia of Telephony and Telegraphy, vol. 1, ch. VIII); 20 Hz is nominal.',
  'generator.ohms': '250 to 600 Ω, from memory.',
  maxLossDb:
    '30 dB, the planning limit between local-battery sets, from memory; derived from the old commercial limit, speech still passes at 35 dB.',
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
  source: 'bridging ringer of an old correspondence textbook on telephony; the rest from memory',
  sources: {
    ...CRANK_SOURCES,
    'ringer.ohms':
      'Bridging ringers of 1000 and 1600 Ω: an old correspondence textbook on telephone sets, p. 66; 2500 Ω for heavily loaded lines, from memory.',
    'ringer.henries': 'From memory: chosen to give the impedance usual at 20 Hz.',
    'ringer.minVolts': 'From memory: 3 to 5 mA move the armature.',
  },
})

/** The sets that the program knows of its own. */
export const SETS: readonly TelephoneSet[] = [
  crankSet({ ohms: 1000, henries: 20, minVolts: 12 }),
  crankSet({ ohms: 1600, henries: 40, minVolts: 16 }),
  crankSet({ ohms: 2500, henries: 70, minVolts: 22 }),
  {
    id: 'sound-powered',
    name: 'Sound-powered set with hand generator',
    talk: 'sound',
    offHook: { dcOhms: 60, acOhms: 600, minMA: 0 },
    ringer: { ohms: 1000, henries: 20, minVolts: 12 },
    generator: { volts: 65, hz: 20, ohms: 700 },
    maxLossDb: 10,
    source: 'range of 4 miles on WD-1 (a page on TM 11-5805-243-13); the rest from memory',
    sources: {
      ...CRANK_SOURCES,
      'offHook.minMA': 'None: the voice powers it.',
      maxLossDb: 'Derived: 4 miles of wet WD-1 (TM 11-5805-243-13 as a page quotes it) at 2.5 dB per mile.',
      ringer: 'From memory.',
      'generator.volts': 'From memory.',
      'generator.ohms': 'From memory.',
    },
  },
  {
    id: 'common-1-ren',
    name: 'Common-battery set, one ringer equivalent',
    talk: 'common',
    offHook: { dcOhms: 200, acOhms: 600, minMA: 20 },
    ringer: ONE_RINGER_EQUIVALENT,
    maxLossDb: 25,
    source: 'ringer by TIA-968 and 47 CFR 68.312; current limit by ANSI T1.401, from memory',
    sources: {
      'offHook.dcOhms': '200 Ω typical, from memory; 430 Ω is the most that line equipment allows for.',
      'offHook.acOhms': 'From memory: 600 to 900 Ω.',
      'offHook.minMA': '20 mA: ANSI T1.401 and network practice, from memory.',
      'ringer.ohms': 'One ringer equivalent is 7000 Ω at 20 Hz (47 CFR 68.312).',
      'ringer.minVolts': '40 V: the least of the ringing table of TIA-968.',
      maxLossDb:
        '10 to 25 dB between subscribers is desirable (Fundamental transmission planning of telephone networks, 1940).',
    },
  },
]
