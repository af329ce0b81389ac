import { BUILT_IN } from '../catalog/built-in'
import { mergeCatalogs } from '../catalog/catalog'
import { withLearned } from '../field/learned-figures'
import { crossingsOfPlan } from '../hazard/crossings'
import { carryingOf } from '../materials/carrying'
import { hoursOfPlan } from '../materials/hours'
import { gearOfLine, type LineGear } from '../materials/line-gear'
import { loadsOf } from '../materials/loads'
import { planSpools } from '../materials/plan-spools'
import type { WireSpools } from '../materials/spool-plan'
import { layingOf, loadAllowancesOf } from '../materials/work-allowances'
import { measurePlan } from '../measure/measure-line'
import { memoryOfRow } from '../memo'
import { lineRowOf } from '../plan/line-row'
import type { Line, Plan } from '../plan/plan'
import type { Ground } from '../terrain/ground'
import type { Caution } from './caution'
import { circuitReport } from './circuit-report'
import { doubtsOf } from './doubts'
import { type FieldWork, NO_FIELD_WORK } from './field-work'
import { hazardCautions } from './hazard-cautions'
import type { Report } from './report'
import { reportLines } from './report-line'
import { riderCautions } from './rider-cautions'
import { safetyCautions } from './safety-cautions'
import { spliceCautions } from './splice-cautions'
import { splicesOf } from './spliced-lines'

const rememberedGear = memoryOfRow<Line, LineGear>()

/**
 * The report of a checked plan, with what `work` makes of the records in it.
 *
 * @param ground elevations, where they are known
 * @param settled while a hand drags, the plan from before: see `planSpools`
 */
export function reportWith(work: FieldWork, plan: Plan, ground?: Ground, settled?: Plan): Report {
  const book = mergeCatalogs(BUILT_IN, plan.catalog)
  const measured = measurePlan(plan, ground)
  const { learn, usedSpools, lineFields, ownHours, leftToDo } = plan.field ? work : NO_FIELD_WORK
  const { spools, pieces } = usedSpools(plan, planSpools(plan, book, measured, settled), measured)
  const splices = splicesOf(plan, pieces)
  const learned = learn(plan, book, measured, splices)
  const catalog = withLearned(book, learned)
  const fields = lineFields(plan, learned)
  const crossings = crossingsOfPlan(plan)
  const lines = reportLines(plan, catalog, { measured, pieces, crossings, splices, fields })
  const gear = rememberedGear(lineRowOf(plan).lines, [], [lines], (line, place) => {
    const { legs, tags } = lines[place]!
    return gearOfLine(line, legs, tags.length)
  })
  const carrying = carryingOf(plan, measured, catalog, loadAllowancesOf(plan))
  const hours = ownHours(plan, measured, layingOf(plan), (laying) =>
    hoursOfPlan(plan, measured, pieces, crossings, laying, carrying),
  )
  return {
    title: plan.title,
    lines,
    circuits: [...plan.circuits.values()].map((circuit) =>
      circuitReport(plan, circuit, catalog, measured, splices),
    ),
    spools,
    loads: loadsOf(plan, catalog, spools, loadAllowancesOf(plan), gear),
    hours,
    ...(leftToDo && { left: leftToDo(plan, catalog, fields, { measured, pieces, hours }) }),
    cautions: [
      ...safetyCautions(plan, catalog),
      ...riderCautions(plan, catalog, measured),
      ...hazardCautions(plan, measured, crossings, catalog, ground),
      ...spliceCautions(plan, measured, pieces),
      ...stockCautions(spools),
    ],
    doubts: doubtsOf(plan, measured, ground, settled),
  }
}

const stockCautions = (spools: readonly WireSpools[]): Caution[] =>
  spools
    .filter(({ missingM, notLaid }) => missingM > 0 || notLaid.length > 0)
    .map(({ wire, missingM, notLaid }) => ({ code: 'stock-short', where: wire, missingM, notLaid }))
