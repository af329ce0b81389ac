import type { Catalog } from '../catalog/catalog'
import { CROSSING_PRACTICE, POWER_APPROACH } from '../catalog/crossing-practice'
import { CROSSED } from '../hazard/crossed'
import type { Crossing } from '../hazard/crossings'
import { ridgeStretches } from '../hazard/ridges'
import { stretchesBeside } from '../hazard/stretches-beside'
import type { MeasuredLine } from '../measure/measured'
import { memoryOfEach } from '../memo'
import type { LineId } from '../plan/id'
import { lineName, type Plan, verticesOf } from '../plan/plan'
import type { Ground } from '../terrain/ground'
import { cautionAt, type JudgedLine, LOCAL_CODE, metresAndFeet } from './judged-line'
import { overheadCautions, overRailCaution, overRoadCaution } from './overhead-cautions'
import type { Caution } from './report'

const remembered = memoryOfEach<MeasuredLine, readonly Caution[]>()

/** What each line meets on its way, judged by the handbooks' figures; in the order of the lines. */
export function hazardCautions(
  plan: Plan,
  measured: ReadonlyMap<LineId, MeasuredLine>,
  crossings: ReadonlyMap<LineId, readonly Crossing[]>,
  catalog: Catalog,
  ground?: Ground,
): Caution[] {
  return [...plan.lines.values()].flatMap((line) => {
    const ofLine = measured.get(line.id)!
    const wire = catalog.wires.get(line.wire)
    const name = lineName(plan, line)
    // A line measured the same, over the same hazards and with the same wire, is in the same danger.
    return remembered(ofLine, [plan.hazards, wire, plan.wireTempC, name], () =>
      judge({ plan, line, name, measured: ofLine, wire, ground }, crossings.get(line.id)!),
    )
  })
}

function judge(judged: JudgedLine, crossings: readonly Crossing[]): Caution[] {
  return [
    ...crossings.flatMap((crossing) => crossingCaution(judged, crossing) ?? []),
    ...powerCautions(judged, crossings),
    ...overheadCautions(judged),
    ...ridgeCautions(judged),
  ]
}

function crossingCaution(judged: JudgedLine, crossing: Crossing): Caution | undefined {
  const { kind, lay, insideM } = crossing
  const say = (code: string, text: string, source: string) => cautionAt(judged, crossing, code, text, source)
  switch (kind) {
    case 'road':
      if (lay === 'overhead') return overRoadCaution(judged, crossing)
      if (lay === 'buried') return undefined
      return say(
        'surface-over-road',
        ` and lies open on it: traffic is what breaks wire. Take it through a culvert, bury it ${CROSSED.underRoad}, or hang it over.`,
        'SS0440, p. 1-27, and SS0444, p. 2-2; depth from memory of FM 24-20',
      )
    case 'track':
      if (lay === 'overhead') return overRoadCaution(judged, crossing)
      if (lay === 'buried') return undefined
      return say(
        'surface-over-track',
        ` and lies open on it. Bury it ${CROSSED.underTrack}, or hang it over.`,
        'Popular Science Monthly 90 (1917), p. 820',
      )
    case 'railway':
      if (lay === 'buried') return undefined
      if (lay === 'overhead') return overRailCaution(judged, crossing)
      return say(
        'railway-not-under',
        ` and does not go under the rails. With the railway’s consent, pass it under them ${CROSSED.underRails}.`,
        'SS0444, p. 2-4; California GO 95, rule 110, on consent',
      )
    case 'water':
      if (lay !== 'surface') return undefined
      return say(
        'surface-over-water',
        `${insideM > 1 ? ` for ${Math.round(insideM)} m` : ''} with a lay for dry ground. Tie it to a bridge on the downstream side, hang it over, or lay it as water: ${CROSSED.inWater}.`,
        'FM 24-20, from memory',
      )
    case 'power-line':
      return powerCrossing(say, crossing)
    case 'keep-out':
      return say(
        'keep-out-entered',
        insideM > 1 ? ` and stays in it for ${Math.round(insideM)} m. Lead it round.` : '. Lead it round.',
        'the plan’s own keep-out area',
      )
  }
}

function powerCrossing(
  say: (code: string, text: string, source: string) => Caution,
  { lay, angleDeg }: Crossing,
): Caution {
  const askew = angleDeg !== undefined && angleDeg < CROSSING_PRACTICE.squareDeg
  const square = askew ? ` It crosses at ${Math.round(angleDeg)}°: turn it square.` : ''
  const hung =
    lay === 'overhead'
      ? ' Hung wire can whip up into it: take it down to the ground here, or have the owner switch off.'
      : ' Keep it on or under the ground here, and throw no wire.'
  return say(
    'power-line-crossing',
    `.${hung}${square} Nobody, and no wire or pole in hand, comes within ${metresAndFeet(POWER_APPROACH.metres)} of it, more above 50 kV.`,
    `${POWER_APPROACH.source}; SS0330, p. 139, on noise`,
  )
}

/** Beside a power line without crossing it: too near, or too long. */
function powerCautions({ plan, line, name }: JudgedLine, crossings: readonly Crossing[]): Caution[] {
  const { powerBesideM, powerAlongM, powerReachM } = CROSSING_PRACTICE
  return stretchesBeside(plan, line, 'power-line', powerBesideM).flatMap((beside) => {
    const power = beside.name || 'a power line'
    const place = { position: beside.position, legIndex: beside.legIndex, distanceM: beside.startM }
    const crosses = crossings.some(
      ({ hazard, distanceM }) =>
        hazard === beside.hazard && distanceM >= beside.startM - 10 && distanceM <= beside.endM + 10,
    )
    const cautions: Caution[] = []
    if (!crosses && beside.nearestM < powerReachM) {
      cautions.push({
        code: 'power-line-near',
        where: line.id,
        text: `${name} comes within ${Math.max(1, Math.round(beside.nearestM))} m of ${power}: a falling pole or a whipping wire would reach it. Move the line off. ${LOCAL_CODE}`,
        place,
        source: 'common practice; SS0330, p. 139',
      })
    }
    if (beside.parallelM > powerAlongM) {
      cautions.push({
        code: 'power-line-parallel',
        where: line.id,
        text: `${name} runs beside ${power} for ${Math.round(beside.parallelM)} m within ${powerBesideM} m: it will hum, and a fault on the power line can put a dangerous voltage on the pair. Move it off or cross square and leave. ${LOCAL_CODE}`,
        place,
        source: 'SS0330, p. 139, and FM 24-20 from memory; distances are common practice',
      })
    }
    return cautions
  })
}

function ridgeCautions({ plan, line, name, ground }: JudgedLine): Caution[] {
  if (!ground) return []
  return ridgeStretches(ground, verticesOf(plan, line))
    .filter(({ startM, endM }) => endM - startM >= CROSSING_PRACTICE.ridgeM)
    .map(({ startM, endM, position, legIndex }) => ({
      code: 'ridge-lightning',
      where: line.id,
      text: `${name} runs along high ground for ${Math.round(endM - startM)} m, from ${Math.round(startM)} m out, where lightning looks for it. Lead it below the crest, and leave it alone when thunder is near.`,
      place: { position, legIndex, distanceM: startM },
      source: 'Navy training manual 14071, p. 2-9',
    }))
}
