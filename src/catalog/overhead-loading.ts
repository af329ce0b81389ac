import { METRES_PER_FOOT, MM_PER_INCH, NEWTONS_PER_POUND_FORCE } from '../units'

/** Ice and wind that a line in the air must bear. */
export interface Loading {
  /** Radial thickness of ice, mm. */
  readonly iceMm: number
  /** Wind across the span on wire and ice, Pa. */
  readonly windPa: number
  readonly tempC: number
  readonly source: string
}

const PASCALS_PER_POUND_A_FOOT2 = NEWTONS_PER_POUND_FORCE / METRES_PER_FOOT ** 2
const celsius = (fahrenheit: number) => ((fahrenheit - 32) * 5) / 9

const LOADING_TABLE = 'NESC Rule 250B'

/** Names of the loading districts, the mildest first. */
export const LOADING_DISTRICTS = ['light', 'medium', 'heavy'] as const

export type LoadingDistrict = (typeof LOADING_DISTRICTS)[number]

/**
 * Loading districts, by the ice that is reckoned with. Which one a place lies in stands on the code's map; on ridges and coasts it can be worse.
 * GO 95 (California), rule 43.1, asks for 6 lb/ft² in its heavy district.
 */
export const LOADINGS = {
  light: {
    iceMm: 0,
    windPa: 9 * PASCALS_PER_POUND_A_FOOT2,
    tempC: celsius(30),
    source: `${LOADING_TABLE}, light, from memory: no ice, 9 lb/ft², 30 °F`,
  },
  medium: {
    iceMm: MM_PER_INCH / 4,
    windPa: 4 * PASCALS_PER_POUND_A_FOOT2,
    tempC: celsius(15),
    source: `${LOADING_TABLE}, medium, as a maker’s sag table for aerial service wire (2004) quotes it: 0.25 in of ice, 4 lb/ft², 15 °F`,
  },
  heavy: {
    iceMm: MM_PER_INCH / 2,
    windPa: 4 * PASCALS_PER_POUND_A_FOOT2,
    tempC: celsius(0),
    source: `${LOADING_TABLE}, heavy, from memory: 0.5 in of ice, 4 lb/ft², 0 °F; GO 95, rule 43.1, has the same ice and temperature`,
  },
} as const satisfies Readonly<Record<LoadingDistrict, Loading>>

/** Ice at 57 lb/ft³, kg/m³. GO 95 (California), rule 43.1. */
export const ICE_KG_PER_M3 = 913

/** The share of its breaking strength that a loaded wire may be pulled to. NESC Rule 261, from memory: 60 %; GO 95 asks for a factor of 2. */
export const LOADED_SHARE = 0.6
