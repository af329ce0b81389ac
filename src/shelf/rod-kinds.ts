import { rodOhms } from '../budget/earth-electrode'
import { EARTH_RODS, type EarthRod, SOILS, type Soil } from '../catalog/soils'
import type { Shelf } from './shelf'

/** Earth rods of one kind, and what each of them resists where it is driven. */
export interface RodKind {
  readonly rod: EarthRod
  readonly count: number
  /** As the soil usually is, and as it may be at its driest, Ω. */
  readonly ohms: number
  readonly mostOhms: number
}

export const soilOf = ({ soil }: Pick<Shelf, 'soil'>): Soil => SOILS.find(({ id }) => id === soil)!

/** To two digits: soil is no surer. */
const about = (ohms: number): number => Number(ohms.toPrecision(2))

/** Rods as they stand in the shelf's soil; what was measured of one holds as it was read. */
export function rodKinds(shelf: Shelf): readonly RodKind[] {
  const { ohmM, mostOhmM } = soilOf(shelf)
  const kinds = new Map<string, RodKind>()
  for (const { id, count, measured } of shelf.have.rods) {
    if (count < 1) continue
    const ohms = measured?.ohms
    const rod = EARTH_RODS.find((each) => each.id === id)!
    const key = `${id} ${ohms ?? ''}`
    const driven = { lengthM: rod.lengthM, diameterM: rod.diameterMm / 1000 }
    kinds.set(key, {
      rod,
      count: count + (kinds.get(key)?.count ?? 0),
      ohms: ohms ?? about(rodOhms(driven, ohmM)),
      mostOhms: ohms ?? about(rodOhms(driven, mostOhmM)),
    })
  }
  return [...kinds.values()]
}
