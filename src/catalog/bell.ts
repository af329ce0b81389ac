import { members, optional } from '../schema/schema'
import { from, orNone } from './entry'

/** A bell, or what works like one, across the line: resistance, inductance and capacitor in series. */
export const bellOf = (thing: string) =>
  members(`The ${thing}`, {
    /** Series resistance, Ω (the DC resistance where there is no capacitor). */
    ohms: from(`The resistance of the ${thing}`, 'Ω', 1, 1e6),
    henries: optional(orNone(`The inductance of the ${thing}`, 'H', 0.001, 1e4)),
    /** Series capacitor, µF. Without one it draws DC. */
    microF: optional(from(`The capacitor of the ${thing}`, 'µF', 0.001, 1e4)),
    /** Least rms voltage across the whole branch that works it, V. */
    minVolts: orNone(`The least voltage of the ${thing}`, 'V', 0.1, 1000),
  })

/** A generator of ringing: open-circuit rms volts behind a resistance. */
export const generatorOf = (thing: string) =>
  members(`The ${thing}`, {
    volts: orNone(`The voltage of the ${thing}`, 'V', 0.1, 1000),
    hz: from(`The frequency of the ${thing}`, 'Hz', 1, 1000),
    ohms: orNone(`The resistance of the ${thing}`, 'Ω', 0.1, 1e6),
  })
