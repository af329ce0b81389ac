import geomagnetism from 'geomagnetism'
import type { Position } from '../geo/position'
import { bad, ok, type Result } from '../problem'

/** Where a compass needle points. */
export interface Declination {
  /** Angle from true north to magnetic north, °, east positive. */
  readonly eastDeg: number
  /** The model and its epoch: `WMM2025`. */
  readonly model: string
}

/**
 * Magnetic declination at sea level on a day, ° east of true north.
 *
 * World Magnetic Model, degree and order 12, with its secular variation, by the package `geomagnetism`.
 * Source: NOAA/NCEI and BGS, The US/UK World Magnetic Model for 2025–2030 (2024). Range: the five years of each model; within
 * about 1° (the model's stated error is 0.4°, iron and rock near by add more), worse near the magnetic poles.
 *
 * @param day ISO 8601, `2026-11-25`
 */
export function declinationAt([lonDeg, latDeg]: Position, day: string): Result<Declination> {
  const date = new Date(`${day}T12:00:00Z`)
  if (Number.isNaN(date.getTime())) {
    return bad({ code: 'no-date', at: 'date', message: 'Give a date, so that magnetic north can be told.' })
  }
  try {
    const model = geomagnetism.model(date)
    const eastDeg = model.point([latDeg, lonDeg]).decl
    return ok({ eastDeg, model: model.name.replace('-', '') })
  } catch {
    // The package throws where the day lies beyond its models; it has no other way to say so.
    return bad({
      code: 'no-magnetic-model',
      at: 'date',
      message: `No magnetic model here covers ${day}: bearings stand from true north. Take the declination from a current map.`,
    })
  }
}
