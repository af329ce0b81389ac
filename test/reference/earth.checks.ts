import { rodOhms, rodsOhms } from '../../src/budget/earth-electrode'
import { SOILS } from '../../src/catalog/soils'
import { METRES_PER_FOOT, MM_PER_INCH } from '../../src/units'
import { checks } from './check'

const rod = (feet: number, inches: number) => ({
  lengthM: feet * METRES_PER_FOOT,
  diameterM: (inches * MM_PER_INCH) / 1000,
})
const soilOhmM = (id: string) => SOILS.find((soil) => soil.id === id)!.ohmM

const handbook = checks(
  {
    source: { work: 'MIL-HDBK-419A, vol. 2', place: '1.2.2.2: rod of 10 ft × 3/4 in in 10 000 Ω·cm' },
    tolerancePct: 1,
    because: 'rounded to whole ohms',
  },
  [{ what: 'one rod', unit: 'Ω', published: 32, computed: rodOhms(rod(10, 0.75), 100) }],
)

const nomograph = checks(
  {
    source: { work: 'Manual of an earth tester', place: 'nomograph: 5/8 in rod, 20 ft deep, in 100 Ω·m' },
    tolerancePct: 10,
    because: 'read from a coarse graph',
  },
  [{ what: 'one rod', unit: 'Ω', published: 20, computed: rodOhms(rod(20, 0.625), 100) }],
)

const soils = checks(
  {
    source: { work: 'IEEE Std 142', place: 'table of soils with a rod of 10 ft × 5/8 in, from memory' },
    tolerancePct: 3.5,
    because: 'rounded to whole ohms',
  },
  [
    { what: 'fill, ashes, brine', id: 'fill', published: 8 },
    { what: 'clay, shale, loam', id: 'clay-loam', published: 13 },
    { what: 'the same with sand and gravel', id: 'clay-sand', published: 52 },
    { what: 'gravel, sand, stones', id: 'gravel', published: 311 },
  ].map(({ id, ...row }) => ({ ...row, unit: 'Ω', computed: rodOhms(rod(10, 0.625), soilOhmM(id)) })),
)

const several = checks(
  {
    source: { work: 'IEEE Std 142', place: 'table 14 as a mailing list quotes it: 3 rods give 43 % of one' },
    tolerancePct: 0.1,
    because: 'the factor is rounded to hundredths',
  },
  [
    {
      what: 'three rods against one',
      unit: '',
      published: 0.43,
      computed: rodsOhms(rod(8, 0.625), 100, 3) / rodOhms(rod(8, 0.625), 100),
    },
  ],
)

export const EARTH_CHECKS = [...handbook, ...nomograph, ...soils, ...several]
