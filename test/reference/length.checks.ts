import { legGeometry } from '../../src/geo/leg-length'
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

export const LENGTH_CHECKS = [...geodesic, ...degrees]
