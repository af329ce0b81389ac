import type { Catalog } from '../catalog/catalog'
import { CROSSING_PRACTICE } from '../catalog/crossing-practice'
import type { Crossing } from '../hazard/crossings'
import { HAZARDS } from '../hazard/kinds'
import { ridgeStretches } from '../hazard/ridges'
import { stretchesBeside } from '../hazard/stretches-beside'
import type { MeasuredLine } from '../measure/measured'
import { joined, memoryOfEach, memoryOfRow } from '../memo'
import { HAZARD_KINDS } from '../plan/hazard-schema'
import type { LineId } from '../plan/id'
import { inRow, lineRowOf } from '../plan/line-row'
import { type Line, type Plan, verticesOf } from '../plan/plan'
import type { Ground } from '../terrain/ground'
import type { Caution, HazardCaution, PlaceCaution } from './caution'
import type { JudgedLine } from './judged-line'
import { hangingOver, overheadCautions } from './overhead-cautions'

const remembered = memoryOfEach<MeasuredLine, readonly Caution[]>()
const rememberedRow = memoryOfRow<Line, readonly Caution[]>()

/** What each line meets on its way, judged by the handbooks' figures; in the order of the lines. */
export function hazardCautions(
  plan: Plan,
  measured: ReadonlyMap<LineId, MeasuredLine>,
  crossings: readonly (readonly Crossing[])[],
  catalog: Catalog,
  ground?: Ground,
): readonly Caution[] {
  const { hazards, wireTempC, loadingDistrict } = plan
  const { lines } = lineRowOf(plan)
  const lengths = inRow(lines, measured)
  const row = rememberedRow(
    lines,
    [hazards, catalog.wires, wireTempC, loadingDistrict],
    [lengths],
    (line, place) => {
      const ofLine = lengths[place]!
      const wire = catalog.wires.get(line.wire)
      // A line measured the same, over the same hazards and with the same wire, is in the same danger.
      return remembered(ofLine, [hazards, wire, wireTempC, loadingDistrict], () =>
        judge({ plan, line, measured: ofLine, wire, ground }, crossings[place]!),
      )
    },
  )
  return joined(row)
}

function judge(judged: JudgedLine, crossings: readonly Crossing[]): Caution[] {
  return [
    ...crossings.flatMap((crossing) => crossingCaution(judged, crossing) ?? []),
    ...besideCautions(judged, crossings),
    ...overheadCautions(judged),
    ...ridgeCautions(judged),
  ]
}

/** A crossing as the table of hazards judges it for the line's lay there. */
function crossingCaution(judged: JudgedLine, crossing: Crossing): HazardCaution | undefined {
  const { kind, lay, hazard, position, legIndex, distanceM } = crossing
  const note = HAZARDS[kind].at[lay].judge?.({
    crossing,
    hanging: () => hangingOver(judged, crossing),
    breakN: judged.wire?.breakN ?? 0,
  })
  return note && { ...note, where: judged.line.id, hazard, place: { position, legIndex, distanceM } }
}

/** A stretch near a hazard ends where it crosses it: so near to the crossing it counts as crossed, m. */
const AT_CROSSING_M = 10

/** Beside hazards of the kinds that are dangerous from a distance. */
function besideCautions({ plan, line }: JudgedLine, crossings: readonly Crossing[]): HazardCaution[] {
  return HAZARD_KINDS.flatMap((kind) => {
    const rule = HAZARDS[kind].beside
    if (!rule) return []
    return stretchesBeside(plan, line, kind, rule.withinM).flatMap((stretch): readonly HazardCaution[] => {
      const { hazard, startM, endM, position, legIndex } = stretch
      const isCrossed = crossings.some(
        (crossing) =>
          crossing.hazard === hazard &&
          crossing.distanceM >= startM - AT_CROSSING_M &&
          crossing.distanceM <= endM + AT_CROSSING_M,
      )
      const place = { position, legIndex, distanceM: startM }
      return rule
        .judge(stretch, isCrossed)
        .map((note): HazardCaution => ({ ...note, where: line.id, hazard, place }))
    })
  })
}

function ridgeCautions({ plan, line, ground }: JudgedLine): PlaceCaution[] {
  if (!ground) return []
  return ridgeStretches(ground, verticesOf(plan, line))
    .filter(({ startM, endM }) => endM - startM >= CROSSING_PRACTICE.ridgeM)
    .map(({ startM, endM, position, legIndex }) => ({
      code: 'ridge-lightning',
      where: line.id,
      lengthM: endM - startM,
      place: { position, legIndex, distanceM: startM },
      source: 'Navy training manual 14071, p. 2-9',
    }))
}
