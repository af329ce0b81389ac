import { sagFactor } from '../../src/measure/sag-factor'
import { EMPTY_PLAN } from '../../src/plan/plan'
import { reportPlan } from '../../src/report/report-plan'
import { KG_PER_POUND, METRES_PER_FOOT, METRES_PER_MILE } from '../../src/units'
import { checks } from './check'
import { NO_SLACK, twoStations } from './two-stations'

const MEASURED = 'the leg itself is measured to 0.01 %'

const slack = checks(
  {
    source: {
      work: 'US Army Signal subcourse SS0444, ed. A',
      place: 'p. 2-2, par. 3: 20 % slack on surface lines',
    },
    tolerancePct: 0.01,
    because: MEASURED,
    sameAsCode: true,
  },
  [
    {
      what: 'wire for 3.7 km of ground',
      unit: 'm',
      published: 4440,
      computed: reportPlan(twoStations({ groundM: 3700 })).lines[0]!.laidM,
    },
  ],
)

/** The wire carried for that line, all of it wound on containers of one length, with nothing for tails, splices or reserve. */
function spools(miles: number) {
  const plan = {
    allowances: { ...EMPTY_PLAN.allowances, tailM: 0, spliceWasteM: 0, reservePct: 0 },
    stock: [{ wire: 'wd-1a', lengthM: miles * METRES_PER_MILE, count: 9 }],
  }
  const { used, splices, carry, kg } = reportPlan(twoStations({ groundM: 3700, plan })).spools[0]!
  const carried = carry.reduce((count, spool) => count + spool.count, 0)
  return { used: used.length, splices, carried, pounds: kg / KG_PER_POUND }
}

const containers = checks(
  {
    source: {
      work: 'US Army Signal subcourse SS0440',
      place: 'table 1-1: lengths and weight of WD-1A/TT; 3.7 km and a fifth are 2.76 miles, reckoned by hand',
    },
    tolerancePct: 0,
    because: 'spools and splices are counted',
    sameAsCode: true,
  },
  [
    { what: 'reels of one mile', unit: '', published: 3, computed: spools(1).used },
    { what: 'splices between reels of one mile', unit: '', published: 2, computed: spools(1).splices },
    { what: 'dispensers of half a mile', unit: '', published: 6, computed: spools(0.5).used },
    {
      what: 'splices between dispensers of half a mile',
      unit: '',
      published: 5,
      computed: spools(0.5).splices,
    },
    {
      what: 'wire on three reels of one mile',
      unit: 'lb',
      published: 3 * 48,
      computed: spools(1).pounds,
      tolerancePct: 0.001,
      because: 'pounds and kilograms are converted to and fro',
    },
  ],
)

const SAG_PAPER = 'Paper on the sag of cable-television lines'
const addedPct = (sagPct: number) => 100 * (sagFactor(sagPct) - 1)

const sag = [
  ...checks(
    {
      source: { work: SAG_PAPER, place: 'eq. 2: extra length 8/3 (sag / span)²' },
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
      source: { work: SAG_PAPER, place: 'eq. 2, for a lance-pole span of 100 ft that sags 2 ft' },
      tolerancePct: 0.01,
      because: MEASURED,
    },
    [
      {
        what: 'wire in the span, as a plan measures it',
        unit: 'ft',
        published: 100 + (8 * 2 ** 2) / (3 * 100),
        computed:
          reportPlan(
            twoStations({
              groundM: 100 * METRES_PER_FOOT,
              lay: 'overhead',
              plan: { allowances: NO_SLACK },
            }),
          ).lines[0]!.laidM / METRES_PER_FOOT,
      },
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
]

export const PLAN_ARITHMETIC_CHECKS = [...slack, ...containers, ...sag]
