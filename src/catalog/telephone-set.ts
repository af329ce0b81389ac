import { idText, oneOf } from '../schema/plain-values'
import { type Held, members, optional } from '../schema/schema'
import { bellOf, generatorOf } from './bell'
import { from, named, orNone, SOURCED } from './entry'

const RINGER = bellOf('bell')

/** A telephone. A figure more is a line more: type, reading, faults, form and the order in a file follow from here. */
export const SET = members('The set', {
  ...named('set'),
  /** `local`: a battery of its own · `common`: fed over the line · `sound`: powered by the voice. */
  talk: oneOf('The way of talking', ['local', 'common', 'sound']),
  offHook: members('The set off hook', {
    /** Resistance to the battery, Ω. */
    dcOhms: orNone('The resistance off hook', 'Ω', 0.1, 1e6),
    /** An electronic set: below this voltage it draws nothing, above it (V − dropVolts) / dcOhms; absent: 0. */
    dropVolts: optional(orNone('The voltage that an electronic set keeps', 'V', 0.01, 1000)),
    /** Impedance to speech at 1 kHz, taken as a resistance, Ω: of a set with a push-to-talk button, while it listens. */
    acOhms: from('The impedance to speech', 'Ω', 1, 1e6),
    /** The same while the button is pressed, Ω; absent: as while listening. */
    speakAcOhms: optional(from('The impedance with the button pressed', 'Ω', 1, 1e6)),
    /** Least direct current that the set works on, mA; 0 where it needs none. */
    minMA: orNone('The least current', 'mA', 0.001, 10_000),
  }),
  ringer: optional(RINGER),
  generator: optional(generatorOf('hand generator')),
  /** Most insertion loss at 1 kHz over which the set is still understood, dB. */
  maxLossDb: orNone('The most speech loss', 'dB', 0.01, 200),
  /** The cells inside a set with a battery of its own. */
  battery: optional(
    members('The battery of the set', {
      volts: from('The voltage of the battery', 'V', 0.1, 1000),
      ampHours: from('The capacity of the battery', 'Ah', 0.001, 1e6),
      talkMA: orNone('The drain while talking', 'mA', 0.001, 1e5),
      idleMA: orNone('The drain on hook', 'mA', 0.001, 1e5),
      /** Id of the cell, and how many of them, where the program knows it. */
      cell: optional(idText('The cell of the battery')),
      cells: optional(from('The number of cells', 'cells', 1, 1000)),
    }),
  ),
  /** Mass with its case and without its cells, kg. */
  kg: optional(orNone('The mass', 'kg', 0.001, 1000)),
  ...SOURCED,
})

export type TelephoneSet = Held<typeof SET>
export type Ringer = Held<typeof RINGER>
