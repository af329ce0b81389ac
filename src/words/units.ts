import {
  KG_PER_POUND,
  METRES_PER_FOOT,
  METRES_PER_MILE,
  MM_PER_INCH,
  NEWTONS_PER_POUND_FORCE,
} from '../units'

/** Which units a person reads; the plan and all reckoning stay in SI. */
export type UnitSystem = 'metric' | 'us'

/** How one quantity is written in one system of units: its sign, and the way from SI and back. */
export interface Unit {
  readonly sign: string
  /** Digits after the point, at most, in a field. */
  readonly digits: number
  readonly fromSi: (si: number) => number
  readonly toSi: (shown: number) => number
}

const times = (sign: string, siPerUnit: number, digits: number): Unit => ({
  sign,
  digits,
  fromSi: (si) => si / siPerUnit,
  toSi: (shown) => shown * siPerUnit,
})

const same = (sign: string, digits: number) => ({
  metric: times(sign, 1, digits),
  us: times(sign, 1, digits),
})

/** A figure per km, shown per mile in US units. */
const perKm = (sign: string, usSign = sign, siPerUsUnit = 1) => ({
  metric: times(`${sign}/km`, 1, 4),
  us: times(`${usSign}/mi`, (siPerUsUnit * 1000) / METRES_PER_MILE, 4),
})

/** Every quantity that a person reads or types. */
export const UNITS = {
  lengthM: { metric: times('m', 1, 2), us: times('ft', METRES_PER_FOOT, 1) },
  lengthKm: { metric: times('km', 1000, 3), us: times('mi', METRES_PER_MILE, 3) },
  depthM: { metric: times('cm', 0.01, 0), us: times('in', MM_PER_INCH / 1000, 0) },
  diameterMm: { metric: times('mm', 1, 1), us: times('in', MM_PER_INCH, 3) },
  strandMm: { metric: times('mm', 1, 3), us: times('in', MM_PER_INCH, 4) },
  massKg: { metric: times('kg', 1, 2), us: times('lb', KG_PER_POUND, 1) },
  forceN: { metric: times('N', 1, 0), us: times('lbf', NEWTONS_PER_POUND_FORCE, 0) },
  tempC: {
    metric: times('°C', 1, 1),
    us: {
      sign: '°F',
      digits: 1,
      fromSi: (c: number) => (c * 9) / 5 + 32,
      toSi: (f: number) => ((f - 32) * 5) / 9,
    },
  },
  /** A difference of temperature: it has no zero to start from. */
  tempStepC: { metric: times('°C', 1, 1), us: times('°F', 5 / 9, 1) },
  ohmPerKm: perKm('Ω'),
  nanoFPerKm: perKm('nF'),
  milliHPerKm: perKm('mH'),
  microSPerKm: perKm('µS'),
  microS: same('µS', 1),
  kgPerKm: perKm('kg', 'lb', KG_PER_POUND),
  perC: { metric: times('per °C', 1, 6), us: times('per °F', 9 / 5, 6) },
  pct: same('%', 2),
  ohm: same('Ω', 2),
  kOhm: same('kΩ', 2),
  volt: same('V', 2),
  mA: same('mA', 2),
  hz: same('Hz', 1),
  db: same('dB', 2),
  henry: same('H', 3),
  microF: same('µF', 3),
  watt: same('W', 3),
  nanoF: same('nF', 1),
  ampHour: same('Ah', 2),
  minute: same('min', 1),
  kmPerHour: { metric: times('km/h', 1, 2), us: times('mph', METRES_PER_MILE / 1000, 2) },
  times: same('×', 2),
  count: same('', 0),
  ratio: same('', 2),
} satisfies Record<string, Record<UnitSystem, Unit>>

export type Quantity = keyof typeof UNITS

export const unitOf = (quantity: Quantity, system: UnitSystem): Unit => UNITS[quantity][system]

/** What stands in a field: no needless zeros, a plain minus, so that it can be typed again. */
export const fieldText = (si: number, unit: Unit): string =>
  String(Number(unit.fromSi(si).toFixed(unit.digits)))

/** Never minus nought. */
const rounded = (value: number, digits: number) => value.toFixed(digits).replace(/^-(?=0\.?0*$)/, '')

const show = (si: number, { fromSi, sign }: Unit, digits: number) => `${rounded(fromSi(si), digits)} ${sign}`

/** Any quantity with its unit, with no needless zeros: `756 N`, `5.5 m`, `60 km/h`. */
export function formatQuantity(si: number, quantity: Quantity, system: UnitSystem): string {
  const unit = unitOf(quantity, system)
  return `${fieldText(si, unit)} ${unit.sign}`.trimEnd()
}

/** `318 m` or `1043 ft`: a length of up to a few kilometres, to the whole unit. */
export const formatLengthM = (m: number, system: UnitSystem): string => show(m, unitOf('lengthM', system), 0)

/** `5.5 m` or `18 ft`: how high wire hangs, how wide a road is; to a tenth. */
export function formatHeightM(m: number, system: UnitSystem): string {
  const { fromSi, sign } = unitOf('lengthM', system)
  return `${Number(rounded(fromSi(m), 1))} ${sign}`
}

/** `6.84 km` or `4.25 mi`: the length of a line or a net, to two decimals. */
export const formatDistanceM = (m: number, system: UnitSystem): string =>
  show(m, unitOf('lengthKm', system), 2)

const isShort = (lengthM: number, system: UnitSystem): boolean =>
  lengthM < (system === 'us' ? METRES_PER_MILE / 10 : 1000) - 0.5

/** `318 m` below a kilometre, else `6.84 km`; `400 ft` below a tenth of a mile, else `4.25 mi`. */
export const formatRunM = (lengthM: number, system: UnitSystem): string =>
  isShort(lengthM, system) ? formatLengthM(lengthM, system) : formatDistanceM(lengthM, system)

/** `33 km`, `850 m`, `4.2 mi`: a length to two figures. */
export function formatRoughM(m: number, system: UnitSystem): string {
  const { fromSi, sign } = unitOf(isShort(m, system) ? 'lengthM' : 'lengthKm', system)
  return `${Number(fromSi(m).toPrecision(2))} ${sign}`
}

/** `13.5 kg` or `29.8 lb`, to one decimal. */
export const formatMassKg = (kg: number, system: UnitSystem): string => show(kg, unitOf('massKg', system), 1)

/** `20 °C` or `68 °F`, to the whole degree. */
export const formatTempC = (c: number, system: UnitSystem): string => show(c, unitOf('tempC', system), 0)

/** `076°`: a bearing in three figures, 000 to 359. */
export const formatBearingDeg = (deg: number): string =>
  `${String(((Math.round(deg) % 360) + 360) % 360).padStart(3, '0')}°`

/** `54.1 Ω` below 100 Ω, `1372 Ω` above: what a meter in the field can tell apart. */
export const formatOhms = (ohms: number): string => `${ohms.toFixed(ohms < 100 ? 1 : 0)} Ω`

/** Three figures that count, never more than two after the point: 4.25, 42.5, 425, 4250. */
const threeFigures = (value: number) =>
  rounded(value, Math.abs(value) < 9.995 ? 2 : Math.abs(value) < 99.95 ? 1 : 0)

/** A figure that was asked for, not measured: `18`, `0.5`. */
export const plainNumber = (value: number): string => String(Number(value.toFixed(2)))

export const formatVolts = (volts: number): string => `${threeFigures(volts)} V`
export const formatMA = (mA: number): string => `${threeFigures(mA)} mA`
export const formatDb = (db: number): string => `${db.toFixed(1)} dB`

/** A few names as one phrase: `A`, `A and B`, `A, B and C`, `A, B and 4 more`. */
export function formatList(names: readonly string[], most = 3): string {
  if (names.length <= 1) return names.join('')
  if (names.length > most) return `${names.slice(0, most - 1).join(', ')} and ${names.length - most + 1} more`
  return `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`
}

/** `1 splice`, `3 splices`. */
export const formatCount = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`
