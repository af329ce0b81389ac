import { legGeometry } from '../../src/measure/leg-length'
import { measureLine } from '../../src/measure/measure-line'
import { sagFactor } from '../../src/measure/sag-factor'
import type { LineId, StationId } from '../../src/plan/id'
import { EMPTY_PLAN, type Lay, type Line, type Plan } from '../../src/plan/plan'
import { METRES_PER_FOOT } from '../../src/units'
import { checks } from './check'

const dms = (degrees: number, minutes: number, seconds: number) => degrees + minutes / 60 + seconds / 3600

const survey = (() => {
  const from = [dms(144, 25, 29.5244), -dms(37, 57, 3.7203)] as const
  const to = [dms(143, 55, 35.3839), -dms(37, 39, 10.1561)] as const
  return legGeometry(from, to)
})()

const geodesic = checks(
  {
    source: {
      work: 'Geocentric Datum of Australia, Technical Manual',
      place: "worked example of Vincenty's formulae, from memory",
    },
    tolerancePct: 0.01,
    because: 'lengths are promised to 0.01 %',
  },
  [
    { what: 'length of a geodesic', unit: 'm', published: 54972.271, computed: survey.mapM },
    {
      what: 'its azimuth at the start',
      unit: '°',
      published: dms(306, 52, 5.37),
      computed: survey.bearingDeg,
      tolerancePct: 0.05,
      because: 'bearings are promised to 0.02° for legs of up to 20 km, and this is 55 km',
    },
  ],
)

/** Length of one degree about a latitude, m, from a leg of a fiftieth of a degree. */
const degreeM = (latDeg: number, along: 'meridian' | 'parallel') => {
  const half = 0.01
  const leg =
    along === 'meridian'
      ? legGeometry([10, latDeg - half], [10, latDeg + half])
      : legGeometry([10 - half, latDeg], [10 + half, latDeg])
  return leg.mapM / (2 * half)
}

const degrees = checks(
  {
    source: {
      work: 'Length of a degree on the WGS 84 ellipsoid (NGA)',
      place: 'table by latitude, from memory',
    },
    tolerancePct: 0.002,
    because: 'rounded to whole metres',
  },
  [
    [0, 110574, 111320],
    [15, 110649, 107550],
    [30, 110852, 96486],
    [45, 111132, 78847],
    [60, 111412, 55800],
    [75, 111618, 28902],
  ].flatMap(([latDeg, meridian, parallel]) => [
    {
      what: `one degree of latitude at ${latDeg}°`,
      unit: 'm',
      published: meridian!,
      computed: degreeM(latDeg!, 'meridian'),
    },
    {
      what: `one degree of longitude at ${latDeg}°`,
      unit: 'm',
      published: parallel!,
      computed: degreeM(latDeg!, 'parallel'),
    },
  ]),
)

/** A plan with one line of one leg, as nearly as can be of a given length along the equator. */
function oneLeg(lengthM: number, lay: Lay, plan: Partial<Plan> = {}) {
  const a = 'a' as StationId
  const b = 'b' as StationId
  const line: Line = {
    id: 'l' as LineId,
    from: a,
    to: b,
    bends: [],
    legs: [{ lay }],
    wire: 'wd-1a',
    pairs: 1,
    return: 'pair',
  }
  const toLonDeg = lengthM / degreeM(0, 'parallel')
  const whole: Plan = {
    ...EMPTY_PLAN,
    ...plan,
    stations: new Map([
      [a, { id: a, name: 'A', note: '', position: [0, 0] }],
      [b, { id: b, name: 'B', note: '', position: [toLonDeg, 0] }],
    ]),
    lines: new Map([[line.id, line]]),
  }
  return measureLine(whole, line)
}

const NO_SLACK: Partial<Plan> = {
  allowances: {
    ...EMPTY_PLAN.allowances,
    slackPct: { surface: 0, overhead: 0, buried: 0, water: 0 },
  },
}

const SAG_PAPER = 'Paper on the sag of cable-television lines'

const addedPct = (sagPct: number) => 100 * (sagFactor(sagPct) - 1)

const sag = [
  ...checks(
    {
      source: {
        work: 'Paper on the sag of cable-television lines',
        place: 'eq. 2: extra length 8/3 (sag / span)²',
      },
      tolerancePct: 4.6,
      because: 'two digits are printed: 0.11 may be anything from 0.105 to 0.115',
    },
    [
      { what: 'extra wire for 2 % of sag', unit: '%', published: 0.11, computed: addedPct(2) },
      { what: 'extra wire for 5 % of sag', unit: '%', published: 0.67, computed: addedPct(5) },
    ],
  ),
  ...checks(
    {
      source: { work: 'Conductor-length calculator, web page', place: 'worked example: span 40, sag 5' },
      tolerancePct: 0.2,
      because: 'the page stops after the first term of the series',
    },
    [{ what: 'length of wire', unit: 'm', published: 41.67, computed: 40 * sagFactor(12.5) }],
  ),
  ...checks(
    {
      source: { work: SAG_PAPER, place: 'eq. 2, for a lance-pole span of 100 ft that sags 2 ft' },
      tolerancePct: 0.01,
      because: 'the leg itself is measured to 0.01 %',
    },
    [
      {
        what: 'wire in the span, as a plan measures it',
        unit: 'ft',
        published: 100 + (8 * 2 ** 2) / (3 * 100),
        computed: oneLeg(100 * METRES_PER_FOOT, 'overhead', NO_SLACK).laidM / METRES_PER_FOOT,
      },
    ],
  ),
]

const arithmetic = [
  ...checks(
    {
      source: {
        work: 'US Army Signal subcourse SS0444, ed. A',
        place: 'p. 2-2, par. 3: 20 % slack on surface lines',
      },
      tolerancePct: 0.01,
      because: 'the leg itself is measured to 0.01 %',
    },
    [
      {
        what: 'wire for 3.7 km of ground',
        unit: 'm',
        published: 4440,
        computed: oneLeg(3700, 'surface').laidM,
      },
    ],
  ),
]

export const LENGTH_CHECKS = [...geodesic, ...degrees, ...sag, ...arithmetic]
