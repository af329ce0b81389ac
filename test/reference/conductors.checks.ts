import { lineConstants } from '../../src/budget/line-constants'
import { awgDiameterMm } from '../../src/catalog/awg'
import { conductorKgPerKm, conductorOhmPerKm, solid } from '../../src/catalog/conductor'
import {
  ALUMINIUM,
  COPPER,
  COPPER_CLAD_STEEL_30,
  HARD_DRAWN_COPPER,
} from '../../src/catalog/conductor-materials'
import { KG_PER_POUND, METRES_PER_FOOT, METRES_PER_MILE, MM_PER_INCH } from '../../src/units'
import { builtInWire } from './built-in-entry'
import { checks } from './check'

const copperOhmPerKm = (gauge: number) => conductorOhmPerKm(solid(COPPER, awgDiameterMm(gauge)))
const KM_PER_KFT = METRES_PER_FOOT
const FOUR_DIGITS = 'four digits are printed; the table rounds its diameters first'

const diameters = checks(
  {
    source: { work: 'ASTM B258, standard diameters of AWG wire', place: 'table 1, from memory' },
    tolerancePct: 0.3,
    because: 'printed to 0.1 mil',
  },
  [
    [10, 101.9],
    [14, 64.1],
    [18, 40.3],
    [24, 20.1],
    [36, 5],
  ].map(([gauge, mils]) => ({
    what: `diameter of ${gauge} AWG`,
    unit: 'mil',
    published: mils!,
    computed: (1000 * awgDiameterMm(gauge!)) / MM_PER_INCH,
  })),
)

const copper = checks(
  {
    source: {
      work: 'NBS Handbook 100, Copper Wire Tables (1966)',
      place: 'annealed copper at 20 °C, as a published AWG resistance table repeats it',
    },
    tolerancePct: 0.06,
    because: FOUR_DIGITS,
  },
  [
    [14, 2.525],
    [16, 4.016],
    [17, 5.064],
    [18, 6.385],
    [19, 8.051],
    [20, 10.15],
    [22, 16.14],
    [23, 20.36],
    [24, 25.67],
    [26, 40.81],
    [28, 64.9],
  ].map(([gauge, ohms]) => ({
    what: `resistance of ${gauge} AWG copper`,
    unit: 'Ω/1000 ft',
    published: ohms!,
    computed: copperOhmPerKm(gauge!) * KM_PER_KFT,
  })),
)

const copperMass = checks(
  {
    source: {
      work: 'NBS Handbook 100, Copper Wire Tables (1966)',
      place: 'mass of annealed copper wire, from memory',
    },
    tolerancePct: 0.1,
    because: FOUR_DIGITS,
  },
  [
    [10, 31.43],
    [14, 12.43],
    [18, 4.917],
    [24, 1.223],
  ].map(([gauge, pounds]) => ({
    what: `mass of ${gauge} AWG copper`,
    unit: 'lb/1000 ft',
    published: pounds!,
    computed: (conductorKgPerKm(solid(COPPER, awgDiameterMm(gauge!))) * KM_PER_KFT) / KG_PER_POUND,
  })),
)

const fahrenheit = (f: number) => ((f - 32) * 5) / 9

const cablePairs = checks(
  {
    source: {
      work: 'Installation practice of a line-equipment maker (2003)',
      place: 'table 9, single-pair loop resistance',
    },
    tolerancePct: 0.1,
    because: 'the table is built on a temperature coefficient of its own that differs in the third digit',
  },
  (
    [
      [19, [16.465, 17.183, 18.261, 18.979]],
      [22, [33.006, 34.446, 36.606, 38.046]],
      [24, [52.498, 54.789, 58.225, 60.516]],
      [26, [83.475, 87.117, 92.581, 96.223]],
    ] as const
  ).flatMap(([gauge, ohms]) =>
    [70, 90, 120, 140].map((tempF, k) => ({
      what: `loop of a ${gauge} AWG cable pair at ${tempF} °F`,
      unit: 'Ω/1000 ft',
      published: ohms[k]!,
      computed: lineConstants(builtInWire(`copper-${gauge}`), 'dry', fahrenheit(tempF)).ohmPerKm * KM_PER_KFT,
    })),
  ),
)

const warm = checks(
  {
    source: {
      work: 'Understanding Telephones, tutorial in a radio magazine (1985)',
      place: 'the phone line',
    },
    tolerancePct: 0.06,
    because: FOUR_DIGITS,
  },
  [
    {
      what: 'resistance of 22 AWG copper at 77 °F',
      unit: 'Ω/1000 ft',
      published: 16.46,
      computed:
        lineConstants(
          { ...builtInWire('copper-22'), loopOhmPerKm: copperOhmPerKm(22) },
          'dry',
          fahrenheit(77),
        ).ohmPerKm * KM_PER_KFT,
    },
  ],
)

const ukCables = checks(
  {
    source: {
      work: 'Telephone cable modelling, web article',
      place: 'table of British local cables: loop resistance per km',
    },
    tolerancePct: 1.6,
    because: 'metric diameters stand for old weights per mile, and three digits are printed',
  },
  [
    [0.32, 434, COPPER],
    [0.4, 275, COPPER],
    [0.63, 109, COPPER],
    [0.9, 55, COPPER],
    [0.5, 287, ALUMINIUM],
    [0.8, 112, ALUMINIUM],
  ].map((row) => {
    const [diameterMm, ohms, material] = row as [number, number, typeof COPPER]
    return {
      what: `loop of ${diameterMm} mm ${material.name}`,
      unit: 'Ω/km',
      published: ohms,
      computed: 2 * conductorOhmPerKm(solid(material, diameterMm)),
    }
  }),
)

const oneMile = checks(
  {
    source: {
      work: 'Hobby page on old telephones, note on artificial lines',
      place: 'one mile of 26 AWG cable',
    },
    tolerancePct: 2.5,
    because: 'a round figure; cable pairs are about 2 % longer than the cable',
  },
  [
    {
      what: 'loop of one mile of 26 AWG pair',
      unit: 'Ω',
      published: 430,
      computed: (builtInWire('copper-26').loopOhmPerKm * METRES_PER_MILE) / 1000,
    },
    {
      what: 'capacitance of one mile of 26 AWG pair',
      unit: 'µF',
      published: 0.082,
      computed: (builtInWire('copper-26').nanoFPerKm * METRES_PER_MILE) / 1e6,
    },
  ],
)

const specifications = [
  ...checks(
    {
      source: { work: 'Data sheets of drop wire to CW 1406 and CW 1411', place: 'conductor resistance' },
      tolerancePct: 0,
      because: 'the specification gives the most allowed',
      bound: 'at most',
    },
    [
      {
        what: 'one wire of 0.9 mm',
        unit: 'Ω/km',
        published: 28,
        computed: conductorOhmPerKm(solid(COPPER, 0.9)),
      },
      {
        what: 'one wire of 0.5 mm',
        unit: 'Ω/km',
        published: 95,
        computed: conductorOhmPerKm(solid(COPPER, 0.5)),
      },
    ],
  ),
  ...checks(
    {
      source: { work: 'ASTM B869-04, copper-clad steel drop wire', place: 'table 1' },
      tolerancePct: 0.1,
      because: 'five digits are printed for the thinnest wire allowed',
    },
    [
      {
        what: 'most resistance of 21 % copper-clad steel of 0.0641 in, at its thinnest (0.0635 in)',
        unit: 'Ω/1000 ft',
        published: 12.249,
        computed:
          conductorOhmPerKm(
            solid({ ...COPPER_CLAD_STEEL_30, ohmMm2PerM: COPPER.ohmMm2PerM / 0.21 }, 0.0635 * MM_PER_INCH),
          ) * KM_PER_KFT,
      },
    ],
  ),
]

/** Resistance of a wire of one mile times its mass: pound-ohms per mile². */
const poundOhms = (material: typeof COPPER, tempC: number) => {
  const conductor = solid(material, 1)
  const ohms =
    (conductorOhmPerKm(conductor) * (1 + material.tempCoeffPerC * (tempC - 20)) * METRES_PER_MILE) / 1000
  return (ohms * conductorKgPerKm(conductor) * METRES_PER_MILE) / 1000 / KG_PER_POUND
}

const mileOhms = checks(
  {
    source: {
      work: 'Wire tables for line engineers, early 20th century',
      place: 'p. 34, mile-ohms at 60 °F',
    },
    tolerancePct: 0.3,
    because: 'the pound-ohm rests on an older density and temperature coefficient',
  },
  [
    {
      what: 'pure copper',
      unit: 'lb·Ω/mile²',
      published: 859,
      computed: poundOhms(COPPER, fahrenheit(60)),
    },
    {
      what: 'hard-drawn line copper',
      sameAsCode: true,
      unit: 'lb·Ω/mile²',
      published: 878,
      computed: poundOhms(HARD_DRAWN_COPPER, fahrenheit(60)),
    },
  ],
)

export const CONDUCTOR_CHECKS = [
  ...diameters,
  ...copper,
  ...copperMass,
  ...cablePairs,
  ...warm,
  ...ukCables,
  ...oneMile,
  ...specifications,
  ...mileOhms,
]
