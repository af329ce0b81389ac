import { ALKALINE_D } from './cells-alkaline'
import { SET_SPREAD_SOURCES, setSpread } from './set-spread'
import { allowance, derived, fromMemory, read, type Sources } from './sources'
import type { Ringer, TelephoneSet } from './telephone-set'

const CRANK = { volts: 80, hz: 20, ohms: 500 }

const GENERATOR_SOURCES: Sources = {
  'generator.volts': fromMemory('75 to 90 V open circuit, from memory; 50 to 100 V in encyclopaedias.'),
  'generator.hz': read(
    'A crank at 200 turns a minute, geared 5 to 1, gives 16.7 Hz (Cyclopedia of Telephony and Telegraphy, vol. 1, ch. VIII); 20 Hz is the nominal figure.',
  ),
  'generator.ohms': fromMemory('250 to 600 Ω, from memory.'),
}

const BELL_SOURCES: Sources = {
  'ringer.ohms': read(
    'Bridging ringers of 1000 and 1600 Ω: an old correspondence textbook on telephone sets, p. 66.',
  ),
  'ringer.henries': fromMemory('From memory: chosen to give the impedance usual at 20 Hz.'),
  'ringer.minVolts': fromMemory('From memory: 2 to 4 mA move the armature.'),
}

const TALK_SOURCES: Sources = {
  'offHook.dcOhms': fromMemory('Secondary of the induction coil and receiver in series, from memory.'),
  'offHook.acOhms': fromMemory('From memory: sets are built for lines of about 600 Ω.'),
  'offHook.speakAcOhms': fromMemory(
    'From memory: the button shorts the receiver out, or cuts it off, and leaves the induction coil alone on the line.',
  ),
  'offHook.minMA': derived('None: the set’s own battery feeds the transmitter.'),
  maxLossDb: fromMemory(
    '30 dB, the planning limit between local-battery sets, from memory; derived from the old commercial limit (Cyclopedia, vol. 1, table I), speech still passes at 35 dB.',
  ),
}

const TWO_D_CELLS = {
  volts: 2 * ALKALINE_D.volts,
  ampHours: ALKALINE_D.ampHours,
  talkMA: 60,
  idleMA: 0,
  cell: ALKALINE_D.id,
  cells: 2,
}
const CELL_SOURCES: Sources = {
  'battery.volts': read(
    'Two or three dry cells of 1.53 V when new: US Army subcourse SS0330, p. 69, par. 38.',
  ),
  'battery.ampHours': ALKALINE_D.sources.ampHours,
  'battery.talkMA': fromMemory('40 to 100 mA through a carbon transmitter at 3 V, from memory.'),
  'battery.idleMA': derived('None: the hook or the button cuts the battery off.'),
  'battery.cells': read(
    'Two or three dry cells: US Army subcourse SS0330, p. 69, par. 38; two in a field set.',
  ),
}
const CASE_KG = 4.14
const CASE_SOURCE = derived(
  'About 9.75 lb with battery for a set in a leather or canvas case (a collector’s page on TM 11-333), less two cells of 139 g.',
)

/** A local-battery crank set with a bridging ringer, named by the direct-current resistance of its coils. */
const crankSet = (ringer: Ringer): TelephoneSet => ({
  id: `crank-${ringer.ohms}`,
  name: `Crank set, ${ringer.ohms} Ω ringer`,
  talk: 'local',
  offHook: { dcOhms: 100, acOhms: 600, minMA: 0 },
  ringer,
  generator: CRANK,
  maxLossDb: 30,
  battery: TWO_D_CELLS,
  kg: CASE_KG,
  source: 'bridging ringer of an old correspondence textbook on telephone sets; the rest from memory',
  sources: {
    ...TALK_SOURCES,
    ...GENERATOR_SOURCES,
    ...BELL_SOURCES,
    ...(ringer.ohms > 1600 && { 'ringer.ohms': fromMemory('2500 Ω for heavily loaded lines, from memory.') }),
    ...CELL_SOURCES,
    kg: CASE_SOURCE,
    ...SET_SPREAD_SOURCES,
  },
  spread: setSpread(ringer, { crank: true }),
})

const RINGER_1000: Ringer = { ohms: 1000, henries: 20, minVolts: 12 }
const RINGER_1600: Ringer = { ohms: 1600, henries: 40, minVolts: 16 }
const RINGER_2500: Ringer = { ohms: 2500, henries: 70, minVolts: 22 }

/** The patterns that turn up, by what is on them. */
const PATTERNS: readonly TelephoneSet[] = [
  {
    ...crankSet(RINGER_1600),
    id: 'crank-press-to-talk',
    name: 'Crank set in a case, handset with a button to press while speaking, two D cells',
    offHook: { dcOhms: 100, acOhms: 600, speakAcOhms: 300, minMA: 0 },
    spread: { ...setSpread(RINGER_1600, { crank: true }), 'offHook.speakAcOhms': 40 },
    source: 'bridging ringer of an old correspondence textbook on telephone sets; the rest from memory',
  },
  {
    ...crankSet(RINGER_1600),
    id: 'crank-wall-five-bar',
    name: 'Crank wall set of wood, generator of five magnets, 1600 Ω bell, two large dry cells',
    generator: { volts: 90, hz: 17, ohms: 600 },
    battery: { volts: 3, ampHours: 30, talkMA: 60, idleMA: 0 },
    kg: 9,
    sources: {
      ...crankSet(RINGER_1600).sources,
      'generator.volts': fromMemory('85 to 95 V of five magnets, from memory.'),
      'generator.ohms': fromMemory('From memory.'),
      'battery.ampHours': fromMemory('25 to 35 Ah of a No. 6 dry cell, from memory.'),
      kg: allowance('Allowance: a box of oak with its bells.'),
    },
  },
  {
    ...crankSet(RINGER_1000),
    id: 'crank-desk-three-bar',
    name: 'Crank desk set, small generator of three magnets, 1000 Ω bell',
    generator: { volts: 65, hz: 18, ohms: 350 },
    kg: 3,
    sources: {
      ...crankSet(RINGER_1000).sources,
      'generator.volts': fromMemory('60 to 70 V of three magnets, from memory.'),
      'generator.ohms': fromMemory('From memory.'),
      kg: allowance('Allowance: a case of steel or bakelite.'),
    },
  },
]

const SOUND_SOURCES: Sources = {
  'offHook.dcOhms': fromMemory('From memory.'),
  'offHook.acOhms': read('600 Ω nominal of one element: a collector’s guide to sound-powered telephones.'),
  'offHook.minMA': derived('None: the voice powers it.'),
  maxLossDb: derived(
    'Between 6 dB, which 4 miles (6.4 km) of dry WD-1 lose, and 10 dB, which they lose wet: the page on TM 11-5805-243-13 gives the range and no weather; the loss by SS0440, table 1-1.',
  ),
  kg: fromMemory('From memory.'),
  ...SET_SPREAD_SOURCES,
  'spread.maxLossDb': derived('6 dB if the range is for dry wire, 10 dB if for wet.'),
}

/** Sets with a battery of their own, or none. */
export const LOCAL_SETS: readonly TelephoneSet[] = [
  ...[RINGER_1000, RINGER_1600, RINGER_2500].map(crankSet),
  ...PATTERNS,
  {
    id: 'crank-electronic',
    name: 'Field set with electronic ringing and a tone bell',
    talk: 'local',
    offHook: { dcOhms: 150, acOhms: 600, minMA: 0 },
    ringer: { ohms: 15000, microF: 1, minVolts: 20 },
    generator: { volts: 60, hz: 25, ohms: 1000 },
    maxLossDb: 33,
    battery: {
      volts: 6,
      ampHours: ALKALINE_D.ampHours,
      talkMA: 25,
      idleMA: 0.5,
      cell: ALKALINE_D.id,
      cells: 4,
    },
    kg: 2.5,
    source: 'from memory',
    sources: {
      offHook: fromMemory('From memory.'),
      ringer: fromMemory('From memory: a tone bell loads the line little.'),
      generator: fromMemory('From memory: a converter on the talking battery, 48 to 75 V at 20 to 25 Hz.'),
      maxLossDb: fromMemory('From memory: an amplified receiver hears about 3 dB more than a carbon set.'),
      battery: fromMemory('From memory: four D cells; a tone bell that listens all day takes a little.'),
      'battery.ampHours': ALKALINE_D.sources.ampHours,
      kg: fromMemory('From memory.'),
      ...SET_SPREAD_SOURCES,
    },
    spread: setSpread({ ohms: 15000, microF: 1, minVolts: 20 }, { crank: true }),
  },
  {
    id: 'sound-powered',
    name: 'Sound-powered set with hand generator',
    talk: 'sound',
    offHook: { dcOhms: 60, acOhms: 600, minMA: 0 },
    ringer: RINGER_1000,
    generator: { volts: 65, hz: 20, ohms: 700 },
    maxLossDb: 8,
    kg: 1.3,
    source: 'range of 4 miles on WD-1, dry or wet (a page on TM 11-5805-243-13); the rest from memory',
    sources: {
      ...SOUND_SOURCES,
      ringer: fromMemory('From memory.'),
      generator: fromMemory('From memory: a squeezed or cranked generator, weaker than that of a crank set.'),
    },
    spread: { ...setSpread(RINGER_1000, { crank: true }), maxLossDb: 30 },
  },
  {
    id: 'sound-powered-plain',
    name: 'Sound-powered handset, called by voice or whistle',
    talk: 'sound',
    offHook: { dcOhms: 60, acOhms: 600, minMA: 0 },
    maxLossDb: 8,
    kg: 0.6,
    source: 'range of 4 miles on WD-1, dry or wet (a page on TM 11-5805-243-13); the rest from memory',
    sources: SOUND_SOURCES,
    spread: { ...setSpread(undefined), maxLossDb: 30 },
  },
]
