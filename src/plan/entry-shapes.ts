import { SOURCE_KINDS } from '../catalog/sources'
import type { Limit } from './limits'
import { type Check, either, idText, listOf, members, number, oneOf, recordOf, text } from './shape'

/** From zero up: a resistance, a loss, a capacitance. */
const fromZero = (what: string, unit: string, max = 1e6): Check => number({ what, min: 0, max, unit })
/** Above zero: what something is divided by, or what is nothing at zero. */
const aboveZero = (what: string, unit: string, max = 1e6): Check =>
  number({ what, min: 0, max, unit, above: true })

const tempCoeff: Limit = { what: 'The temperature coefficient', min: -0.1, max: 0.1, unit: 'per °C' }
const ringHz = aboveZero('The ringing frequency', 'Hz', 1000)

const NAMES = {
  name: text('The name'),
  source: text('The source'),
  sources: recordOf(
    'The member "sources"',
    text('The name of a quantity'),
    either(
      text('A source'),
      members('A source', {
        kind: oneOf('The kind of source', SOURCE_KINDS),
        says: text('What the source says'),
      }),
    ),
  ),
  spread: recordOf('The member "spread"', text('The name of a quantity'), fromZero('A spread', '%', 10_000)),
}
const kg = fromZero('The mass', 'kg')

/** A wire, as a plan file or a form gives it. */
export const WIRE_SHAPE: Check = members(
  'The wire',
  {
    id: idText('The id of the wire'),
    loopOhmPerKm: fromZero('The loop resistance', 'Ω/km'),
    tempCoeffPerC: number(tempCoeff),
    nanoFPerKm: fromZero('The capacitance', 'nF/km'),
    loopMilliHPerKm: fromZero('The loop inductance', 'mH/km'),
    dryMicroSPerKm: fromZero('The leakage when dry', 'µS/km'),
    wetMicroSPerKm: fromZero('The leakage when wet', 'µS/km'),
    kgPerKm: fromZero('The mass', 'kg/km'),
    breakN: fromZero('The breaking strength', 'N', 1e7),
    spoolsM: listOf('The list of standard spools', aboveZero('The length of a spool', 'm')),
  },
  {
    ...NAMES,
    wetNanoFPerKm: fromZero('The capacitance when wet', 'nF/km'),
    wornMicroSPerKm: fromZero('The leakage when worn and wet', 'µS/km'),
    steel: members('The steel of the wire', {
      diameterMm: aboveZero('The diameter', 'mm', 100),
      relativePermeability: aboveZero('The relative permeability', 'times that of air'),
    }),
  },
)

/** A telephone, as a plan file or a form gives it. */
export const SET_SHAPE: Check = members(
  'The set',
  {
    id: idText('The id of the set'),
    talk: oneOf('The way of talking', ['local', 'common', 'sound']),
    offHook: members(
      'The set off hook',
      {
        dcOhms: fromZero('The resistance off hook', 'Ω'),
        acOhms: aboveZero('The impedance to speech', 'Ω'),
        minMA: fromZero('The least current', 'mA', 10_000),
      },
      {
        dropVolts: fromZero('The voltage that an electronic set keeps', 'V', 1000),
        speakAcOhms: aboveZero('The impedance with the button pressed', 'Ω'),
      },
    ),
    maxLossDb: fromZero('The most speech loss', 'dB', 10_000),
  },
  {
    ...NAMES,
    ringer: members(
      'The ringer',
      {
        ohms: aboveZero('The resistance of the ringer', 'Ω'),
        minVolts: fromZero('The least ringing voltage', 'V', 1000),
      },
      {
        henries: fromZero('The inductance of the ringer', 'H', 10_000),
        microF: aboveZero('The capacitor of the ringer', 'µF'),
      },
    ),
    generator: members('The generator', {
      volts: fromZero('The voltage of the generator', 'V', 1000),
      hz: ringHz,
      ohms: fromZero('The resistance of the generator', 'Ω'),
    }),
    battery: members(
      'The battery of the set',
      {
        volts: aboveZero('The voltage of the battery', 'V', 1000),
        ampHours: aboveZero('The capacity', 'Ah'),
        talkMA: fromZero('The drain while talking', 'mA', 100_000),
        idleMA: fromZero('The drain on hook', 'mA', 100_000),
      },
      { cell: idText('The cell of the battery'), cells: aboveZero('The number of cells', 'cells', 1000) },
    ),
    kg,
  },
)

/** A supply, as a plan file or a form gives it. */
export const SUPPLY_SHAPE: Check = members(
  'The supply',
  {
    id: idText('The id of the supply'),
    kind: oneOf('The kind of supply', ['feed', 'series', 'ringdown']),
    volts: fromZero('The voltage of the supply', 'V', 1000),
    ohms: fromZero('The feed resistance', 'Ω'),
  },
  {
    ...NAMES,
    maxMA: aboveZero('The current limit', 'mA'),
    offHookMA: aboveZero('The current at which the line counts as answered', 'mA'),
    powerW: members('What the supply takes', {
      idle: fromZero('The power on hook', 'W'),
      talk: fromZero('The power while talking', 'W'),
      ring: fromZero('The power while ringing', 'W'),
    }),
    fedBy: members(
      'What feeds the supply',
      {
        volts: aboveZero('The voltage of the battery', 'V', 1000),
        ampHours: aboveZero('The capacity', 'Ah'),
        efficiencyPct: number({ what: 'The efficiency', min: 0, max: 100, unit: '%', above: true }),
      },
      { cell: idText('The cell of the battery') },
    ),
    kg,
    ring: members(
      'The ring source',
      {
        volts: fromZero('The ringing voltage', 'V', 1000),
        hz: ringHz,
        ohms: fromZero('The resistance of the ring source', 'Ω'),
      },
      { maxLoad: aboveZero('The most ringer load', 'ringer equivalents', 10_000) },
    ),
    indicator: members('The indicator', {
      forwardVolts: fromZero('The forward voltage of the indicator', 'V', 1000),
      ohms: fromZero('The resistance of the indicator', 'Ω'),
    }),
    insertionDb: fromZero('The speech loss through the unit', 'dB', 200),
    ampHours: aboveZero('The capacity', 'Ah'),
    endVolts: fromZero('The voltage at the end of the battery', 'V', 1000),
    cell: idText('The cell of the battery'),
  },
)

/** An entry as it comes back from a file: no member that is undefined, and 0 for −0. */
export const asFileHolds = <T extends object>(entry: T): T => JSON.parse(JSON.stringify(entry))
