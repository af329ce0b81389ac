import { lineConstants } from '../budget/line-constants'
import { BUILT_IN } from '../catalog/built-in'
import { type Catalog, mergeCatalogs } from '../catalog/catalog'
import { type Crossing, crossingsOf } from '../hazard/crossings'
import { hoursOfPlan } from '../materials/hours'
import { loadsOf } from '../materials/loads'
import { planSpools } from '../materials/plan-spools'
import { splicePlacesOf } from '../materials/splice-limits'
import type { Piece, WireSpools } from '../materials/spool-plan'
import { layingOf, loadAllowancesOf } from '../materials/work-allowances'
import { lineTags } from '../measure/line-tags'
import { measurePlan } from '../measure/measure-line'
import type { MeasuredLine } from '../measure/measured'
import { type Line, lineName, type Plan } from '../plan/plan'
import type { Ground } from '../terrain/ground'
import { circuitReport } from './circuit-report'
import { hazardCautions } from './hazard-cautions'
import type { Caution, Report, ReportLine } from './report'
import { safetyCautions } from './safety-cautions'
import { spliceCautions } from './splice-cautions'

/**
 * The report of a checked plan: lengths, figures and verdicts of every circuit, spools and cautions. Remedies are left empty:
 * they are searched on demand (see remedies).
 *
 * @param ground elevations, where they are known
 */
export function reportPlan(plan: Plan, ground?: Ground): Report {
  const catalog = mergeCatalogs(BUILT_IN, plan.catalog)
  const measured = measurePlan(plan, ground)
  const { spools, pieces } = planSpools(plan, catalog, measured)
  const crossings = new Map([...plan.lines.values()].map((line) => [line.id, crossingsOf(plan, line)]))
  return {
    title: plan.title,
    lines: [...plan.lines.values()].map((line) =>
      reportLine(
        plan,
        line,
        catalog,
        measured.get(line.id)!,
        pieces.get(line.id) ?? [],
        crossings.get(line.id)!,
      ),
    ),
    circuits: [...plan.circuits.values()].map((circuit) => circuitReport(plan, circuit, catalog, measured)),
    spools,
    loads: loadsOf(plan, catalog, spools, loadAllowancesOf(plan)),
    hours: hoursOfPlan(plan, measured, pieces, crossings, layingOf(plan)),
    cautions: [
      ...safetyCautions(plan, catalog),
      ...hazardCautions(plan, measured, crossings, catalog, ground),
      ...spliceCautions(plan, measured, pieces),
      ...stockCautions(plan, spools, catalog),
    ],
  }
}

function reportLine(
  plan: Plan,
  line: Line,
  catalog: Catalog,
  measured: MeasuredLine,
  pieces: readonly Piece[],
  crossings: readonly Crossing[],
): ReportLine {
  const wire = catalog.wires.get(line.wire)
  if (!wire) throw new Error(`line ${line.id} is of wire ${line.wire}, which nothing defines`)
  const km = measured.wireM / 1000
  const [fromOhm, toOhm] = line.return === 'earth' ? (line.electrodeOhms ?? [0, 0]) : [0, 0]
  const { ohmPerKm } = lineConstants(wire, plan.weather, plan.wireTempC, line.return)
  return {
    id: line.id,
    name: lineName(plan, line),
    mapM: measured.mapM,
    groundM: measured.groundM,
    laidM: measured.laidM,
    wireM: measured.wireM,
    loopOhms: ohmPerKm * km + fromOhm + toOhm,
    kg: wire.kgPerKm * km * line.pairs,
    legs: measured.legs,
    pieces,
    crossings,
    tags: lineTags(plan, measured, line, crossings),
    splices: splicePlacesOf(plan, line, measured, pieces),
  }
}

const stockCautions = (plan: Plan, spools: readonly WireSpools[], catalog: Catalog): Caution[] =>
  spools
    .filter(({ missingM, notLaid }) => missingM > 0 || notLaid.length > 0)
    .map(({ wire, missingM, notLaid }) => {
      const short = `The stock of ${catalog.wires.get(wire)?.name ?? wire} is ${Math.ceil(missingM)} m too short`
      const names = notLaid.map((id) => lineName(plan, plan.lines.get(id)!)).join(', ')
      const text =
        names === '' ? `${short} for the reserve; it lays every line.` : `${short} to lay ${names} whole.`
      return { code: 'stock-short', where: wire, text }
    })
