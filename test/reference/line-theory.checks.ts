import { abs, add, complex, divide, multiply, ONE, sqrt } from '../../src/budget/complex'
import { propagation } from '../../src/budget/line-constants'
import { cascade, inputOhm, lineChain } from '../../src/budget/uniform-line'
import { pairMilliHPerKm, pairNanoFPerKm } from '../../src/catalog/pair-geometry'
import { METRES_PER_FOOT, MM_PER_INCH } from '../../src/units'
import { checks } from './check'
import { angleDeg, KM_PER_MILE, printedLine, velocity, z0 } from './published-line'

const BIRD = 'J. Bird, Electrical Circuit Theory and Technology, ch. 44'
const LAST_DIGIT = 'rounded to the digits printed'

const bird7 = printedLine({ ohm: 15, milliH: 3.4, microS: 3, nanoF: 10 })
const bird9 = printedLine({ ohm: 25, milliH: 5, microS: 80, nanoF: 40 })
const bird12 = printedLine({ ohm: 80, milliH: 200, microS: 2, nanoF: 5 })

/** A matched line: current at its far end over volts at its near end, S. */
const farCurrentPerVolt = (
  nepersPerKm: number,
  radPerKm: number,
  z0Ohm: { re: number; im: number },
  km: number,
) => {
  // Constants that give this γ and Z₀ at 1 rad/s: R + jX = γ Z₀, G + jB = γ / Z₀.
  const gamma = complex(nepersPerKm, radPerKm)
  const series = multiply(gamma, z0Ohm)
  const shunt = divide(gamma, z0Ohm)
  const line = {
    ohmPerKm: series.re,
    henryPerKm: series.im,
    siemensPerKm: shunt.re,
    faradPerKm: shunt.im,
  }
  const chain = lineChain(line, km, 1 / (2 * Math.PI))
  const volts = add(add(z0Ohm, multiply(chain.aLessOne, z0Ohm)), chain.bOhm)
  return divide(ONE, volts)
}

const degrees = (deg: number) => (deg * Math.PI) / 180
const bird4Z0 = complex(800 * Math.cos(degrees(-25)), 800 * Math.sin(degrees(-25)))
const bird4Current = farCurrentPerVolt(0.5, 0.25, bird4Z0, 5)
const bird3Volts = multiply(farCurrentPerVolt(0.25, 0.2, complex(600), 10), complex(600))

const bird = checks(
  {
    source: { work: BIRD, place: 'worked examples; inputs from a companion, printed answers from memory' },
    tolerancePct: 0.1,
    because: LAST_DIGIT,
  },
  [
    { what: '|Z₀|, ex. 44.7', unit: 'Ω', published: 600, computed: z0(bird7, 2000).ohm, tolerancePct: 0.2 },
    { what: 'angle of Z₀, ex. 44.7', unit: '°', published: -8.99, computed: z0(bird7, 2000).deg },
    { what: '|Z₀|, ex. 44.9', unit: 'Ω', published: 390.157, computed: z0(bird9, 1000).ohm },
    {
      what: 'loss of a distortionless line √(RG), ex. 44.12',
      unit: 'Np/km',
      published: 0.01265,
      computed: propagation(bird12, 1500).gammaPerKm.re,
    },
    {
      what: 'phase of a distortionless line ω√(LC), ex. 44.12',
      unit: 'rad/km',
      published: 0.298,
      computed: propagation(bird12, 1500).gammaPerKm.im,
    },
    {
      what: 'wavelength of a distortionless line, ex. 44.12',
      unit: 'km',
      published: 21.08,
      computed: velocity(bird12, 1500) / 1500,
    },
    {
      what: 'current at the far end of a matched 5 km line, ex. 44.4',
      unit: 'mA',
      published: 0.2052,
      computed: 1000 * abs(multiply(bird4Current, complex(2))),
    },
    {
      what: 'its phase, ex. 44.4',
      unit: '°',
      published: -46.62,
      computed: angleDeg(bird4Current),
    },
    {
      what: 'volts at 10 km with 5 V sent over 0.25 Np/km, ex. 44.3',
      unit: 'V',
      published: 0.41,
      computed: 5 * abs(bird3Volts),
      tolerancePct: 0.5,
      because: 'two digits are printed',
    },
  ],
)

const openWire = [
  { mils: 165, ohm: 4.11, milliH: 3.37, nanoF: 9.15, z: 612, deg: -5.35 },
  { mils: 128, ohm: 6.74, milliH: 3.53, nanoF: 8.71, z: 650, deg: -8.32 },
  { mils: 104, ohm: 10.15, milliH: 3.66, nanoF: 8.37, z: 692, deg: -11.75 },
].map((row) => ({ ...row, line: printedLine({ ...row, microS: 0.29 }) }))

const OPEN_WIRE = {
  work: 'Principles of Electricity Applied to Telephone and Telegraph Work',
  place: 'open-wire pairs 12 in apart, constants per loop mile at 1 kHz, from memory',
}

const openWireImpedance = checks(
  { source: OPEN_WIRE, tolerancePct: 0.4, because: LAST_DIGIT },
  openWire.flatMap(({ mils, line, z, deg }) => [
    { what: `|Z₀| of a ${mils} mil pair`, unit: 'Ω', published: z, computed: z0(line, 1000).ohm },
    { what: `angle of Z₀ of a ${mils} mil pair`, unit: '°', published: deg, computed: z0(line, 1000).deg },
  ]),
)

const SPACING = 12 * MM_PER_INCH
const openWireGeometry = checks(
  { source: OPEN_WIRE, tolerancePct: 0.5, because: LAST_DIGIT },
  openWire.flatMap(({ mils, milliH, nanoF }) => {
    const geometry = { spacingMm: SPACING, diameterMm: (mils / 1000) * MM_PER_INCH }
    return [
      {
        what: `inductance of a ${mils} mil pair from its spacing`,
        unit: 'mH/mile',
        published: milliH,
        computed: pairMilliHPerKm(geometry, 1) * KM_PER_MILE,
      },
      {
        what: `capacitance of a ${mils} mil pair from its spacing`,
        unit: 'nF/mile',
        published: nanoF,
        computed: pairNanoFPerKm(geometry, 1) * KM_PER_MILE,
        tolerancePct: 2,
        because: 'the table counts the neighbouring wires, the earth and the insulators in',
      },
    ]
  }),
)

const cyclopedia = checks(
  {
    source: { work: 'Cyclopedia of Telephony and Telegraphy, vol. 1 (1911)', place: 'capacity of lines' },
    tolerancePct: 1,
    because: 'one digit is printed',
  },
  [
    {
      what: 'two wires of 0.165 in, 1 ft apart',
      unit: 'µF/mile',
      published: 0.009,
      computed:
        (pairNanoFPerKm({ spacingMm: METRES_PER_FOOT * 1000, diameterMm: 0.165 * MM_PER_INCH }, 1) *
          KM_PER_MILE) /
        1000,
    },
  ],
)

const tollCable = (ohm: number) => printedLine({ ohm, milliH: 1, microS: 1.5, nanoF: 62 })

const velocities = checks(
  {
    source: { work: 'US Army Signal subcourse SS0330, ed. 9', place: 'p. 118, par. 58: velocity at 1 kHz' },
    tolerancePct: 1.5,
    because: 'the page gives the ends of a range for "usual sizes"; their constants are from memory',
  },
  [
    { what: '104 mil open wire', published: 176000, line: openWire[2]!.line },
    { what: '165 mil open wire', published: 180000, line: openWire[0]!.line },
    { what: 'toll cable, 19 AWG', published: 47600, line: tollCable(85.8) },
    { what: 'toll cable, 16 AWG', published: 65300, line: tollCable(42.1) },
  ].map(({ line, ...row }) => ({ ...row, unit: 'mile/s', computed: velocity(line, 1000) })),
)

/** Characteristic impedance from what a meter shows with the far end open and shorted: √(Z_open Z_short). */
function fromOpenAndShort() {
  const chain = lineChain(bird9, 20, 1000)
  const open = inputOhm(chain, complex(1e15))
  const short = inputOhm(chain, complex(0))
  return abs(sqrt(multiply(open, short)))
}

/** The classic long power line: z = 0.8431∠79.04° Ω and y = 5.105∠90° µS per mile, 230 miles, 60 Hz. */
const powerLine = {
  ohmPerKm: 0.8431 * Math.cos(degrees(79.04)),
  henryPerKm: (0.8431 * Math.sin(degrees(79.04))) / (2 * Math.PI * 60),
  faradPerKm: 5.105e-6 / (2 * Math.PI * 60),
  siemensPerKm: 0,
}
const powerChain = lineChain(powerLine, 230, 60)
const halfChain = lineChain(powerLine, 115, 60)
const twoHalves = cascade(halfChain, halfChain)

const chainMatrix = checks(
  {
    source: {
      work: 'J. J. Grainger and W. D. Stevenson, Power System Analysis (1994)',
      place: 'ex. 6.3, from memory',
    },
    tolerancePct: 0.06,
    because: LAST_DIGIT,
  },
  [
    { what: '|Z₀|', unit: 'Ω', published: 406.4, computed: z0(powerLine, 60).ohm },
    { what: 'angle of Z₀', unit: '°', published: -5.48, computed: z0(powerLine, 60).deg },
    {
      what: '|γl|',
      unit: '',
      published: 0.4772,
      computed: 230 * abs(propagation(powerLine, 60).gammaPerKm),
    },
    { what: '|A| = |cosh γl|', unit: '', published: 0.8904, computed: abs(add(ONE, powerChain.aLessOne)) },
    {
      what: 'angle of A',
      unit: '°',
      published: 1.34,
      computed: angleDeg(add(ONE, powerChain.aLessOne)),
      tolerancePct: 0.5,
      because: 'three digits are printed',
    },
    { what: '|B| = |Z₀ sinh γl|', unit: 'Ω', published: 186.78, computed: abs(powerChain.bOhm) },
    {
      what: '|C| = |sinh γl / Z₀|',
      unit: 'S',
      published: 0.001131,
      computed: abs(powerChain.cSiemens),
    },
    {
      what: '|D| of two half lines, one behind the other',
      unit: '',
      published: 0.8904,
      computed: abs(add(ONE, twoHalves.dLessOne)),
    },
    {
      what: '|B| of two half lines, one behind the other',
      unit: 'Ω',
      published: 186.78,
      computed: abs(twoHalves.bOhm),
    },
  ],
)

const openAndShort = checks(
  {
    source: {
      work: 'Review questions on transmission lines, web page',
      place: 'line of 25 Ω, 5 mH, 40 nF, 80 µS',
    },
    tolerancePct: 0.01,
    because: 'six digits are printed; the same page has its attenuation wrong, and that is not used',
  },
  [
    {
      what: '|Z₀| from the open and the shorted impedance of 20 km',
      unit: 'Ω',
      published: 390.157,
      computed: fromOpenAndShort(),
    },
  ],
)

export const LINE_THEORY_CHECKS = [
  ...bird,
  ...openWireImpedance,
  ...openWireGeometry,
  ...cyclopedia,
  ...velocities,
  ...openAndShort,
  ...chainMatrix,
]
