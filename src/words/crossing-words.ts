import { HEIGHT_OVER } from '../catalog/crossing-practice'
import { CROSSED } from '../hazard/crossed'
import type { Crossing } from '../hazard/crossings'
import { hazardName } from '../hazard/kinds'
import type { Caution, ReportLine } from '../report/report'
import type { Tongue } from './tongue'

const hungOver = (over: 'road' | 'track', { height }: Tongue) =>
  `hang it over, ${height(HEIGHT_OVER[over].metres)} clear at its lowest; keep traffic off while it hangs low`

/** What the crew does at a crossing that is laid as it should be; undefined where only a caution can tell. */
function directions({ kind, lay }: Crossing, say: Tongue): string | undefined {
  if (kind === 'road' || kind === 'track') {
    if (lay === 'overhead') return hungOver(kind, say)
    if (lay !== 'buried') return undefined
    return kind === 'road'
      ? `take it through a culvert, or bury it ${CROSSED.underRoad}`
      : `bury it ${CROSSED.underTrack}`
  }
  if (kind === 'railway' && lay === 'buried')
    return `with the railway’s consent, under the rails ${CROSSED.underRails}`
  if (kind !== 'water') return undefined
  if (lay === 'overhead') return `hang it over, ${CROSSED.overWater}`
  if (lay === 'water') return `lay it ${CROSSED.inWater}`
  return lay === 'buried' ? `lead it under, ${CROSSED.underWater}` : undefined
}

/**
 * What the crew meets on a line, in the order in which it comes to it: for a crossing that is in order what to do there, and every
 * caution of the line in its own words.
 */
export function onTheWay(line: ReportLine, cautions: readonly Caution[], say: Tongue): readonly string[] {
  const own = cautions.filter(({ where }) => where === line.id)
  const isCautioned = ({ legIndex, distanceM }: Crossing) =>
    own.some(({ place }) => place?.legIndex === legIndex && Math.abs(place.distanceM - distanceM) < 0.5)
  const steps = [
    ...line.crossings.flatMap((crossing) => {
      const doing = isCautioned(crossing) ? undefined : directions(crossing, say)
      const { kind, name: hazard, distanceM } = crossing
      const what = hazardName(hazard, kind)
      return doing ? [{ atM: distanceM, text: `${what}, ${say.length(distanceM)} out: ${doing}.` }] : []
    }),
    ...own.map(({ text, place }) => ({ atM: place?.distanceM ?? 0, text })),
  ]
  return steps.toSorted((a, b) => a.atM - b.atM).map(({ text }) => text)
}
