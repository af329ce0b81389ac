import type { Crossing } from '../../hazard/crossings'
import { hazardName } from '../../hazard/kinds'
import type { ReportLine } from '../../report/report'
import { requestPlace } from '../../state/requests'
import type { Store } from '../../state/store'
import { LAY_WORDS } from '../../words/plan-words'
import { formatLengthM, formatRunM } from '../../words/units'

/** What a line crosses, in order: where, how square, and how it is laid there. Each leads to its place. */
export function CrossingList({ store, line }: { store: Store; line: ReportLine }) {
  const { crossings } = line
  if (crossings.length === 0) return null
  return (
    <>
      <h3>It crosses</h3>
      <ul class="rows crossings">
        {crossings.map((crossing) => (
          <li key={`${crossing.hazard} ${crossing.distanceM}`}>
            <button
              type="button"
              class="quiet"
              onClick={() => {
                store.selection.value = { kind: 'line', id: line.id, legs: [crossing.legIndex] }
                store.cursor.value = { line: line.id, mapM: crossing.distanceM }
                requestPlace(crossing.position)
              }}
            >
              {hazardName(crossing.name, crossing.kind)}
            </button>
            <span class="soft">{crossingWords(crossing, store)}</span>
          </li>
        ))}
      </ul>
    </>
  )
}

function crossingWords({ distanceM, angleDeg, insideM, lay }: Crossing, store: Store): string {
  const system = store.units.value
  const words = [
    `${formatRunM(distanceM, system)} out`,
    ...(insideM > 1 ? [`for ${formatLengthM(insideM, system)}`] : []),
    ...(angleDeg === undefined || insideM > 1 ? [] : [`at ${Math.round(angleDeg)}°`]),
    LAY_WORDS[lay],
  ]
  return words.join(', ')
}
