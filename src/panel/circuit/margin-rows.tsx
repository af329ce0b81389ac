import './margin-rows.css'
import { OnDemand } from '../question'
import { VerdictMark } from '../verdict-mark'
import type { MarginRow } from './margins'

/** Where the upright stands: the least that is needed. */
const LEAST_PCT = 33

/** A scale with an upright at the least that is needed and a dot at what there is: their distance is the margin. */
function MarginScale({ margin }: { margin: MarginRow }) {
  const dotPct = Math.min(98, Math.max(2, margin.share * LEAST_PCT))
  return (
    <svg class={`scale ${margin.verdict}`} height="16" aria-hidden="true">
      <line class="ground" x1="0" x2="100%" y1="8" y2="8" />
      <line class="gap" x1={`${LEAST_PCT}%`} x2={`${dotPct}%`} y1="8" y2="8" />
      <line class="least" x1={`${LEAST_PCT}%`} x2={`${LEAST_PCT}%`} y1="1" y2="15" />
      <circle cx={`${dotPct}%`} cy="8" r="5" />
    </svg>
  )
}

function Rows({ margins }: { margins: readonly MarginRow[] }) {
  return (
    <ul class="margins">
      {margins.map((margin) => (
        <li key={margin.name}>
          <span class="of">{margin.name}</span>
          <MarginScale margin={margin} />
          <span class="figure">
            <strong>{margin.is}</strong> <span class="soft">{margin.needs}</span>
          </span>
          <VerdictMark verdict={margin.verdict} bare />
        </li>
      ))}
    </ul>
  )
}

/** The few worst margins at once, the rest on demand. */
export function MarginRows({ margins, most = 4 }: { margins: readonly MarginRow[]; most?: number }) {
  const worstFirst = margins.toSorted((a, b) => a.share - b.share)
  const rest = worstFirst.slice(most)
  return (
    <>
      <Rows margins={worstFirst.slice(0, most)} />
      {rest.length > 0 && (
        <OnDemand title={`The other ${rest.length}, which stand better`}>
          <Rows margins={rest} />
        </OnDemand>
      )}
    </>
  )
}
