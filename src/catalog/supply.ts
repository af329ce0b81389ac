import { idText, oneOf } from '../schema/plain-values'
import { type Held, members, optional } from '../schema/schema'
import { bellOf, generatorOf } from './bell'
import { from, howMany, named, orNone, SOURCED } from './entry'

/** Ringing source: open-circuit rms volts behind a resistance. */
const RING = members('The ring source', {
  volts: orNone('The ringing voltage', 'V', 0.1, 1000),
  hz: from('The ringing frequency', 'Hz', 1, 1000),
  ohms: orNone('The resistance of the ring source', 'Ω', 0.1, 1e6),
  /** Most ringer equivalents that it may be loaded with. */
  maxLoad: optional(from('The most bells on the ring source', 'ringer equivalents', 0.01, 10_000)),
})

/** Lamp or LED in series with the DC source. */
const INDICATOR = members('The lamp', {
  forwardVolts: orNone('The forward voltage of the lamp', 'V', 0.01, 1000),
  ohms: orNone('The resistance of the lamp', 'Ω', 0.01, 1e6),
  /** Least current at which it is seen; absent: any. */
  minMA: optional(orNone('The least current of the lamp', 'mA', 0.001, 10_000)),
})

/** What feeds a circuit from one station. A figure more is a line more: type, reading, faults, form and file follow from here. */
export const SUPPLY = members('The supply', {
  ...named('supply'),
  /**
   * `feed`: bridged across the pair · `series`: in one leg of the set · `ringdown`: a feed and a ring source for each port ·
   * `exchange`: the same, joining the two ports of a call by itself · `board`: worked by hand, with no direct current.
   */
  kind: oneOf('The kind of supply', ['feed', 'series', 'ringdown', 'exchange', 'board']),
  /** DC open-circuit volts. Absent in a file of a board: 0, as its resistance. */
  volts: orNone('The voltage', 'V', 0.01, 1000),
  /** Total feed resistance, Ω. */
  ohms: orNone('The feed resistance', 'Ω', 0.01, 1e6),
  /** Constant-current limit of an electronic feed, mA. */
  maxMA: optional(from('The current limit', 'mA', 0.01, 1e5)),
  /** Direct current at which it takes the line as answered, mA. */
  offHookMA: optional(from('The current at which the line counts as answered', 'mA', 0.01, 1e5)),
  ring: optional(RING),
  indicator: optional(INDICATOR),
  /** Board and exchange: the most lines that it has room for; absent: as many as there are. */
  ports: optional(howMany('The number of ports', 'ports', 1, 10_000)),
  /** The most calls through it at once: its cords or its speech paths; absent: as many as its ports can make. */
  callsAtOnce: optional(howMany('The most calls at once', 'calls', 1, 10_000)),
  /** Board only: what lies across each port while no cord is in it, and falls when that line rings. */
  drop: optional(bellOf('drop')),
  /** Board only: what rings out on one port. */
  generator: optional(generatorOf('generator')),
  /** Ringdown, board and exchange: speech loss through the unit, or of a cord of the board, dB. */
  insertionDb: optional(orNone('The speech loss through the unit', 'dB', 0.01, 200)),
  ampHours: optional(from('The capacity', 'Ah', 0.001, 1e6)),
  /** Volts at the end of the battery's life. */
  endVolts: optional(orNone('The voltage when spent', 'V', 0.01, 1000)),
  /** Id of the cell of which the battery is made, where the program knows it. */
  cell: optional(idText('The cell of the battery')),
  /** What the unit itself takes from whatever feeds it, W; absent: not known. */
  powerW: optional(
    members('What the supply takes', {
      idle: orNone('The power on hook', 'W', 1e-6, 1e5),
      talk: orNone('The power while talking', 'W', 1e-6, 1e5),
      ring: orNone('The power while ringing', 'W', 1e-6, 1e5),
    }),
  ),
  /** The battery behind the unit, and what of it gets through the converter between. */
  fedBy: optional(
    members('What feeds the supply', {
      volts: from('The voltage of the battery behind it', 'V', 0.1, 1000),
      ampHours: from('The capacity of the battery behind it', 'Ah', 0.001, 1e6),
      efficiencyPct: from('The efficiency', '%', 1, 100),
      /** Id of the cell of which that battery is made, where the program knows it. */
      cell: optional(idText('The cell of the battery behind it')),
    }),
  ),
  /** Mass of the unit with its battery, kg. */
  kg: optional(orNone('The mass', 'kg', 0.001, 1e4)),
  ...SOURCED,
})

export type Supply = Held<typeof SUPPLY>
