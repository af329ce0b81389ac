import { conductorKgPerKm, solid } from '../../src/catalog/conductor'
import { GALVANISED_STEEL, HARD_DRAWN_COPPER } from '../../src/catalog/conductor-materials'
import { hang, tensionAfterN } from '../../src/measure/catenary'
import { loadedWeight } from '../../src/measure/ice-and-wind'
import {
  KG_PER_POUND,
  METRES_PER_FOOT,
  METRES_PER_MILE,
  MM_PER_INCH,
  NEWTONS_PER_POUND_FORCE,
} from '../../src/units'
import { checks } from './check'

const POUND_A_FOOT_N_PER_M = NEWTONS_PER_POUND_FORCE / METRES_PER_FOOT
const POUND_A_FOOT2_PA = NEWTONS_PER_POUND_FORCE / METRES_PER_FOOT ** 2
const KG_PER_KM_PER_POUND_A_FOOT = (1000 * KG_PER_POUND) / METRES_PER_FOOT

/** Pounds per foot of a wire of so many inches and pounds per foot under ice and wind. */
function poundsPerFoot(
  inches: number,
  bare: number,
  load: { readonly iceIn: number; readonly poundsPerFoot2: number },
) {
  const weight = loadedWeight(
    { kgPerKm: bare * KG_PER_KM_PER_POUND_A_FOOT, outsideMm: inches * MM_PER_INCH },
    { iceMm: load.iceIn * MM_PER_INCH, windPa: load.poundsPerFoot2 * POUND_A_FOOT2_PA },
  )
  return {
    plumb: weight.plumbNPerM / POUND_A_FOOT_N_PER_M,
    across: weight.acrossNPerM / POUND_A_FOOT_N_PER_M,
    both: weight.resultantNPerM / POUND_A_FOOT_N_PER_M,
  }
}

const GO_95 = 'General Order 95 (California), original edition'
const LIGHT = { iceIn: 0, poundsPerFoot2: 8 }
const HEAVY = { iceIn: 0.5, poundsPerFoot2: 6 }
const PRINTED = 'three digits are printed, and the table rounds the weight of the bare wire first'

const metalMass = (metal: typeof HARD_DRAWN_COPPER, inches: number) =>
  conductorKgPerKm(solid(metal, inches * MM_PER_INCH)) / KG_PER_KM_PER_POUND_A_FOOT

/** Diameter, in; then lb per foot: bare, light resultant, plumb with ice, wind on ice, heavy resultant. */
const COPPER_ROWS = [
  [0.165, 0.0825, 0.137, 0.496, 0.5825, 0.765],
  [0.144, 0.0628, 0.115, 0.4632, 0.572, 0.736],
  [0.134, 0.0544, 0.105, 0.4486, 0.567, 0.723],
  [0.128, 0.0496, 0.099, 0.4401, 0.564, 0.715],
  [0.1144, 0.0396, 0.086, 0.4216, 0.5572, 0.699],
  [0.104, 0.0327, 0.077, 0.4083, 0.552, 0.687],
  [0.0808, 0.0198, 0.057, 0.3809, 0.5404, 0.661],
] as const

const copper = checks(
  {
    source: { work: GO_95, place: 'appendix B, table 17: solid bare copper, lb per foot' },
    tolerancePct: 0.5,
    because: PRINTED,
  },
  COPPER_ROWS.flatMap(([inches, bare, light, plumb, across, heavy]) => {
    const iced = poundsPerFoot(inches, bare, HEAVY)
    const name = `${inches} in copper`
    return [
      {
        what: `${name}, bare`,
        unit: 'lb/ft',
        published: bare,
        computed: metalMass(HARD_DRAWN_COPPER, inches),
      },
      {
        what: `${name} in a wind of 8 lb/ft²`,
        unit: 'lb/ft',
        published: light,
        computed: poundsPerFoot(inches, bare, LIGHT).both,
        tolerancePct: 0.9,
      },
      { what: `${name} with ½ in of ice`, unit: 'lb/ft', published: plumb, computed: iced.plumb },
      {
        what: `${name}, wind of 6 lb/ft² on the ice`,
        unit: 'lb/ft',
        published: across,
        computed: iced.across,
      },
      { what: `${name}, both together`, unit: 'lb/ft', published: heavy, computed: iced.both },
    ]
  }),
)

const steel = checks(
  {
    source: { work: GO_95, place: 'appendix B, table 21: solid galvanised steel and iron, lb per foot' },
    tolerancePct: 0.5,
    because: PRINTED,
  },
  (
    [
      [4, 0.238, 0.153, 0.22, 0.87],
      [6, 0.203, 0.112, 0.176, 0.814],
      [8, 0.165, 0.074, 0.133, 0.76],
      [9, 0.148, 0.06, 0.116, 0.737],
      [10, 0.134, 0.049, 0.102, 0.72],
      [11, 0.12, 0.039, 0.089, 0.703],
      [12, 0.109, 0.032, 0.079, 0.69],
      [14, 0.083, 0.019, 0.058, 0.662],
    ] as const
  ).flatMap(([gauge, inches, bare, light, heavy]) => [
    {
      what: `${gauge} BWG in a wind of 8 lb/ft²`,
      unit: 'lb/ft',
      published: light,
      computed: poundsPerFoot(inches, bare, LIGHT).both,
      tolerancePct: 1,
    },
    {
      what: `${gauge} BWG with ½ in of ice in a wind of 6 lb/ft²`,
      unit: 'lb/ft',
      published: heavy,
      computed: poundsPerFoot(inches, bare, HEAVY).both,
    },
  ]),
)

const strength = checks(
  {
    source: { work: GO_95, place: 'appendix B, table 17: least strength of hard-drawn copper' },
    tolerancePct: 3,
    because: 'thinner wire is drawn harder: one strength for all sizes is a middle',
  },
  [
    [0.128, 820],
    [0.1144, 661],
    [0.0808, 337],
  ].map(([inches, pounds]) => ({
    what: `strength of ${inches} in`,
    unit: 'lb',
    published: pounds!,
    computed:
      ((Math.PI / 4) * (inches! * MM_PER_INCH) ** 2 * HARD_DRAWN_COPPER.breakNPerMm2) /
      NEWTONS_PER_POUND_FORCE,
  })),
)

const sagFt = (spanFt: number, pounds: number, poundsPerFt: number) => {
  const result = hang({ spanM: spanFt, weightNPerM: poundsPerFt, horizontalN: pounds })
  if (!result.ok) throw new Error(result.problems[0]!.message)
  return result.value.sagM
}

/** Span, ft; stringing tension at 60 °F, lb; sag under medium load, in; tension under it, lb. */
const TWO_PAIR = [
  [50, 40, 18, 122],
  [75, 40, 32, 153],
  [100, 40, 49, 179],
  [125, 40, 67, 203],
  [150, 40, 88, 224],
  [175, 50, 106, 254],
  [200, 55, 126, 277],
  [225, 60, 148, 300],
  [250, 60, 172, 318],
  [275, 70, 193, 344],
  [300, 70, 219, 361],
] as const
const AT_100 = TWO_PAIR[2]
/** Weight that the row of 100 ft implies by the parabola, lb per foot: strung, from its sag of 17 in, and loaded. */
const LOADED = (8 * AT_100[3] * (AT_100[2] / 12)) / 100 ** 2
const BARE = (8 * AT_100[1] * (17 / 12)) / 100 ** 2

const SAG_TABLE = 'Sag and tension table of a two-pair aerial service wire (maker’s sheet, 2004)'
const sags = checks(
  {
    source: {
      work: SAG_TABLE,
      place: 'sag under ¼ in of ice and 4 lb/ft², the weight taken from its row of 100 ft',
    },
    tolerancePct: 1.2,
    because: 'sags are printed to the inch, tensions to the pound',
  },
  TWO_PAIR.filter(([spanFt]) => spanFt > 100).map(([spanFt, , sagIn, pounds]) => ({
    what: `sag of ${spanFt} ft at ${pounds} lb`,
    unit: 'in',
    published: sagIn,
    computed: 12 * sagFt(spanFt, pounds, LOADED),
  })),
)

const strung = (spanFt: number, pounds: number, stiffness: number) =>
  tensionAfterN(
    spanFt,
    { stiffnessN: stiffness, expansionPerC: 10e-6 },
    { weightNPerM: BARE, horizontalN: pounds, tempC: (60 - 32) / 1.8 },
    { weightNPerM: LOADED, tempC: (15 - 32) / 1.8 },
  )

/** The stiffness that takes the row of 100 ft from its stringing tension to its loaded one, lb. */
function stiffnessLb(): number {
  let [low, high] = [100, 1e6]
  for (let i = 0; i < 100; i++) {
    const middle = Math.sqrt(low * high)
    if (strung(100, AT_100[1], middle) < AT_100[3]) low = middle
    else high = middle
  }
  return low
}

const tensions = checks(
  {
    source: { work: SAG_TABLE, place: 'tension under that load, the stiffness taken from its row of 100 ft' },
    tolerancePct: 1,
    because: 'tensions are printed to the pound, and the weight that all follows from to the inch of sag',
  },
  TWO_PAIR.filter(([spanFt]) => spanFt !== 100).map(([spanFt, pounds, , loaded]) => ({
    what: `tension of ${spanFt} ft strung at ${pounds} lb`,
    unit: 'lb',
    published: loaded,
    computed: strung(spanFt, pounds, stiffnessLb()),
  })),
)

const steelPoundsPerMile = (mils: number) =>
  (conductorKgPerKm(solid(GALVANISED_STEEL, (mils / 1000) * MM_PER_INCH)) * METRES_PER_MILE) /
  1000 /
  KG_PER_POUND
const OLD_IRON = 'old iron wire is a little lighter than steel: 7.73 against 7.86 g/cm³'
const iron = [
  ...checks(
    {
      source: { work: 'Popular Science Monthly 70 (1907)', place: 'p. 524: cost of a mile of farm line' },
      tolerancePct: 2,
      because: OLD_IRON,
    },
    [
      {
        what: 'No. 12 iron wire of 109 mil',
        unit: 'lb/mile',
        published: 165,
        computed: steelPoundsPerMile(109),
      },
    ],
  ),
  ...checks(
    {
      source: {
        work: 'Wire tables for line engineers, early 20th century',
        place: 'p. 34: 0.0139 D² lb per mile',
      },
      tolerancePct: 2,
      because: OLD_IRON,
    },
    [{ what: 'iron wire of 100 mil', unit: 'lb/mile', published: 139, computed: steelPoundsPerMile(100) }],
  ),
  ...checks(
    {
      source: {
        work: 'Cyclopedia of Telephony and Telegraphy, vol. 1 (1911)',
        place: 'open wire of 0.08 in',
      },
      tolerancePct: 3,
      because: 'a round figure: "approximately"',
    },
    [
      {
        what: 'copper wire of 0.08 in',
        unit: 'lb/mile',
        published: 100,
        computed:
          (conductorKgPerKm(solid(HARD_DRAWN_COPPER, 0.08 * MM_PER_INCH)) * METRES_PER_MILE) /
          1000 /
          KG_PER_POUND,
      },
    ],
  ),
  ...checks(
    {
      source: {
        work: 'Museum page on losses in early telephone lines',
        place: 'strength of hard-drawn copper',
      },
      tolerancePct: 1,
      because: 'two digits are printed',
    },
    [
      {
        what: 'hard-drawn copper',
        unit: 'lb/in²',
        published: 65_000,
        computed: (HARD_DRAWN_COPPER.breakNPerMm2 * MM_PER_INCH ** 2) / NEWTONS_PER_POUND_FORCE,
      },
    ],
  ),
]

export const OVERHEAD_CHECKS = [...copper, ...steel, ...strength, ...sags, ...tensions, ...iron]
