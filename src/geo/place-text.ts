import { gridReference } from './grid-reference'
import type { Position } from './position'
import { hasUtm, utmFromLonLat, writtenNorthingM } from './utm'

/** How a person likes places written: degrees with decimals, minutes or seconds, a military grid reference, or UTM. */
export type PlaceForm = 'decimal' | 'minutes' | 'seconds' | 'grid' | 'utm'

/** Bands of 8° from 80° S on, of which the last has 12°. DMA TM 8358.1 (1990), section 3-2. */
const BANDS = 'CDEFGHJKLMNPQRSTUVWX'

/**
 * A place on WGS 84 in the form that a person likes, to 2 m or finer: `47.21840° N 11.90510° E`, `47° 13.104′ N 11° 54.306′ E`,
 * `47° 13′ 06.2″ N 11° 54′ 18.4″ E`, `32T PT 20057 32711`, `32T 720057 5232711`. Where no grid reaches, in degrees.
 */
export function placeText(position: Position, form: PlaceForm): string {
  const [lonDeg, latDeg] = position
  if (form === 'grid')
    return (hasUtm(position[1]) ? gridReference(position) : undefined) ?? degreesText(position, DECIMAL)
  if (form === 'utm') return hasUtm(latDeg) ? utmText(lonDeg, latDeg) : degreesText(position, DECIMAL)
  return degreesText(position, DIVISIONS[form])
}

function utmText(lonDeg: number, latDeg: number): string {
  const { zone, eastingM, northingM } = utmFromLonLat(lonDeg, latDeg)
  const band = BANDS[Math.min(BANDS.length - 1, Math.floor((latDeg + 80) / 8))]!
  // Bands from N on lie north of the equator.
  // Adding 0 turns −0 into 0.
  const whole = (m: number) => Math.round(m) + 0
  return `${zone}${band} ${whole(eastingM)} ${whole(writtenNorthingM(northingM, band < 'N'))}`
}

/** How a degree is parted: signs of its parts, each a sixtieth of the one before, and decimals of the last. */
interface Division {
  readonly signs: readonly string[]
  readonly decimals: number
}

const DECIMAL: Division = { signs: ['°'], decimals: 5 }
const DIVISIONS = {
  decimal: DECIMAL,
  minutes: { signs: ['°', '′'], decimals: 3 },
  seconds: { signs: ['°', '′', '″'], decimals: 1 },
} as const satisfies Record<string, Division>

const degreesText = ([lonDeg, latDeg]: Position, division: Division): string =>
  `${partsText(latDeg, division)} ${latDeg < 0 ? 'S' : 'N'} ${partsText(lonDeg, division)} ${lonDeg < 0 ? 'W' : 'E'}`

/** Rounded as a whole first, so that no part reads 60. */
function partsText(deg: number, { signs, decimals }: Division): string {
  const scale = 10 ** decimals
  let rest = Math.round(Math.abs(deg) * 60 ** (signs.length - 1) * scale)
  return signs
    .map((sign, i) => {
      const unit = 60 ** (signs.length - 1 - i) * scale
      const isLast = i === signs.length - 1
      const part = isLast ? rest / scale : Math.floor(rest / unit)
      rest -= Math.floor(rest / unit) * unit
      const text = isLast ? part.toFixed(decimals) : String(part)
      // Minutes and seconds of two digits, so that figures below one another compare.
      return `${i === 0 ? text : text.padStart(isLast ? decimals + 3 : 2, '0')}${sign}`
    })
    .join(' ')
}
