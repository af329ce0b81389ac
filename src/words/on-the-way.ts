import type { Crossing } from '../hazard/crossings'
import { HAZARDS, hazardName } from '../hazard/kinds'
import type { Caution } from '../report/caution'
import type { ReportLine } from '../report/report'
import { cautionText } from './caution-words'
import { directionWords } from './crossing-words'
import type { Tongue } from './tongue'

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
      const { kind, lay, name, distanceM } = crossing
      const { does } = HAZARDS[kind].at[lay]
      if (!does || isCautioned(crossing)) return []
      const text = `${hazardName(name, kind)}, ${say.length(distanceM)} out: ${directionWords(does, say)}.`
      return [{ atM: distanceM, text }]
    }),
    ...own.map((caution) => ({ atM: caution.place?.distanceM ?? 0, text: cautionText(caution, say) })),
  ]
  return steps.toSorted((a, b) => a.atM - b.atM).map(({ text }) => text)
}
