/** A kind of ground, and what it resists. */
export interface Soil {
  readonly id: string
  readonly name: string
  /** Usual resistivity, Ω·m: the average that the source gives, else the geometric mean of its ends. */
  readonly ohmM: number
  readonly leastOhmM: number
  readonly mostOhmM: number
  readonly source: string
}

const TECHNOLOGIC_PAPER = 'US Bureau of Standards Technologic Paper 108, as an earth-testing guide tables it'
const MO_201 = 'Navy MO-201, table 3-3'

/** Two figures: the ends are no surer. */
const middle = (least: number, most: number) => Number(Math.sqrt(least * most).toPrecision(2))

const soil = (id: string, name: string, least: number, most: number): Soil => ({
  id,
  name,
  ohmM: middle(least, most),
  leastOhmM: least,
  mostOhmM: most,
  source: MO_201,
})

/** Resistivity of soils. Water, salt and frost move it tenfold: measure where it matters. */
export const SOILS: readonly Soil[] = [
  {
    id: 'fill',
    name: 'Fill, ashes, brine wastes',
    ohmM: 23.7,
    leastOhmM: 5.9,
    mostOhmM: 70,
    source: TECHNOLOGIC_PAPER,
  },
  {
    id: 'clay-loam',
    name: 'Clay, shale, loam',
    ohmM: 40.6,
    leastOhmM: 3.4,
    mostOhmM: 163,
    source: TECHNOLOGIC_PAPER,
  },
  {
    id: 'clay-sand',
    name: 'Clay or loam with sand and gravel',
    ohmM: 158,
    leastOhmM: 10.2,
    mostOhmM: 1350,
    source: TECHNOLOGIC_PAPER,
  },
  {
    id: 'gravel',
    name: 'Gravel, sand, stones, little clay',
    ohmM: 940,
    leastOhmM: 590,
    mostOhmM: 4580,
    source: TECHNOLOGIC_PAPER,
  },
  soil('moist-clay', 'Moist clay', 14, 30),
  soil('swamp', 'Swamp', 10, 100),
  soil('humus', 'Humus, garden loam', 30, 50),
  soil('wet-sand', 'Sand below the water table', 60, 130),
  soil('stony-loam', 'Broken stone with loam', 200, 350),
  soil('dry-earth', 'Dry earth', 1000, 4000),
  soil('dry-sand', 'Dry sand', 200, 70000),
  {
    id: 'rock',
    name: 'Rock',
    ohmM: 10000,
    leastOhmM: 1000,
    mostOhmM: 100000,
    source: `${MO_201}: about 10 000 Ω·m; ends from memory`,
  },
]

/** A rod that is driven as an earth electrode. */
export interface EarthRod {
  readonly id: string
  readonly name: string
  readonly lengthM: number
  readonly diameterMm: number
  readonly source: string
}

export const EARTH_RODS: readonly EarthRod[] = [
  {
    id: 'pin-0-6',
    name: 'Field pin',
    lengthM: 0.6,
    diameterMm: 12,
    source: 'from memory',
  },
  {
    id: 'rod-1-5',
    name: 'Communications rod',
    lengthM: 1.5,
    diameterMm: 16,
    source: '5 ft: NEC 800.100(B)(3)(2), as quoted; diameter from memory',
  },
  {
    id: 'rod-2-4',
    name: 'Power rod',
    lengthM: 2.44,
    diameterMm: 16,
    source: '8 ft: NEC 250.53, from memory',
  },
  {
    id: 'rod-3-0',
    name: 'Long rod',
    lengthM: 3.048,
    diameterMm: 15.875,
    source: 'IEEE Std 142, the rod of its table of soils',
  },
]
