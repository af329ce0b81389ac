import { KG_PER_POUND, METRES_PER_FOOT, METRES_PER_MILE } from '../units'

/** Which units a person reads; the plan and all reckoning stay in SI. */
export type UnitSystem = 'metric' | 'us'

/** A unit to show a quantity in: its symbol, and the SI quantity turned into it. */
export interface ShownUnit {
  readonly symbol: string
  readonly of: (si: number) => number
}

const METRE: ShownUnit = { symbol: 'm', of: (m) => m }
const FOOT: ShownUnit = { symbol: 'ft', of: (m) => m / METRES_PER_FOOT }
const KILOMETRE: ShownUnit = { symbol: 'km', of: (m) => m / 1000 }
const MILE: ShownUnit = { symbol: 'mi', of: (m) => m / METRES_PER_MILE }
const KILOGRAM: ShownUnit = { symbol: 'kg', of: (kg) => kg }
const POUND: ShownUnit = { symbol: 'lb', of: (kg) => kg / KG_PER_POUND }
const CELSIUS: ShownUnit = { symbol: '°C', of: (c) => c }
const FAHRENHEIT: ShownUnit = { symbol: '°F', of: (c) => (c * 9) / 5 + 32 }

/** Metres or feet: what a leg, a tail or a spool is measured in. */
export const lengthUnit = (system: UnitSystem): ShownUnit => (system === 'us' ? FOOT : METRE)
/** Kilometres or miles: what a whole line or net is measured in. */
export const distanceUnit = (system: UnitSystem): ShownUnit => (system === 'us' ? MILE : KILOMETRE)
export const massUnit = (system: UnitSystem): ShownUnit => (system === 'us' ? POUND : KILOGRAM)
export const tempUnit = (system: UnitSystem): ShownUnit => (system === 'us' ? FAHRENHEIT : CELSIUS)

const show = (si: number, unit: ShownUnit, digits: number) =>
  `${unit
    .of(si)
    .toFixed(digits)
    .replace(/^-(?=0\.?0*$)/, '')} ${unit.symbol}`

/** `318 m` or `1043 ft`: a length of up to a few kilometres, to the whole unit. */
export const formatLengthM = (m: number, system: UnitSystem): string => show(m, lengthUnit(system), 0)

/** `6.84 km` or `4.25 mi`: the length of a line or a net, to two decimals. */
export const formatDistanceM = (m: number, system: UnitSystem): string => show(m, distanceUnit(system), 2)

/** `318 m` below a kilometre, else `6.84 km`; `400 ft` below a tenth of a mile, else `4.25 mi`. */
export const formatRunM = (lengthM: number, system: UnitSystem): string =>
  lengthM < (system === 'us' ? METRES_PER_MILE / 10 : 1000) - 0.5
    ? formatLengthM(lengthM, system)
    : formatDistanceM(lengthM, system)

/** `13.5 kg` or `29.8 lb`, to one decimal. */
export const formatMassKg = (kg: number, system: UnitSystem): string => show(kg, massUnit(system), 1)

/** `20 °C` or `68 °F`, to the whole degree. */
export const formatTempC = (c: number, system: UnitSystem): string => show(c, tempUnit(system), 0)

/** `076°`: a bearing in three figures, 000 to 359. */
export const formatBearingDeg = (deg: number): string =>
  `${String(((Math.round(deg) % 360) + 360) % 360).padStart(3, '0')}°`

/** `54.1 Ω` below 100 Ω, `1372 Ω` above: what a meter in the field can tell apart. */
export const formatOhms = (ohms: number): string => `${ohms.toFixed(ohms < 100 ? 1 : 0)} Ω`
