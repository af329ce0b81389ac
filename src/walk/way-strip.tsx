import { BEND_RADIUS, SPLICE_SIGN, TAG_SIGN, TEST_POINT_RIM } from '../figure/line-signs'
import { pointAtWireM } from '../measure/place-on-line'
import type { FaultFinding } from '../state/findings'
import type { WalkLine } from './walk-line'

/** One unit of the drawing is so many metres; one stands at this height of it. */
const M_PER_UNIT = 2
const [WIDE, HIGH, HERE] = [64, 440, 300]
const MIDDLE = 26

interface Props {
  readonly walked: WalkLine
  /** How likely a fault is along the line, where one is sought. */
  readonly finding: FaultFinding | null
  readonly groundM: number
  /** How sure the place is, m; null where a person said it. */
  readonly accuracyM: number | null
}

/** The way a little behind and ahead, ahead at the top: what lies, what is to come, and how surely one stands where. */
export function WayStrip({ walked, finding, groundM, accuracyM }: Props) {
  const { plan, line, measured, marks, tongue, aheadM } = walked
  const yOf = (m: number) => HERE - aheadM(groundM, m) / M_PER_UNIT
  const onStrip = (m: number) => Math.min(HIGH + 4, Math.max(-4, yOf(m)))
  const groundOf = (wireM: number) => pointAtWireM(plan, measured, line, wireM).groundM
  const seen = marks.filter((mark) => yOf(mark.groundM) > -10 && yOf(mark.groundM) < HIGH + 10)
  return (
    <svg
      class="strip"
      viewBox={`0 0 ${WIDE} ${HIGH}`}
      preserveAspectRatio="xMidYMid slice"
      aria-hidden="true"
    >
      {finding?.found.shade
        .filter((piece) => piece.line === line.id)
        .toSorted((a, b) => b.tone - a.tone)
        .map(({ fromM, toM, tone }) => (
          <path
            key={fromM}
            class={`shade tone-${tone}`}
            d={`M${MIDDLE} ${onStrip(groundOf(fromM))}V${onStrip(groundOf(toM))}`}
          />
        ))}
      {finding?.found.band?.line === line.id &&
        [finding.found.band.fromM, finding.found.band.toM].map((wireM) => (
          <path key={wireM} class="band" d={`M4 ${yOf(groundOf(wireM))}H${2 * MIDDLE - 4}`} />
        ))}
      <path class="to-come" d={`M${MIDDLE} ${onStrip(0)}V${onStrip(measured.groundM)}`} />
      {(['laid', 'tested', 'recovered'] as const).flatMap((sign) =>
        measured.field.done[sign].map(({ fromM, toM }) => (
          <path
            key={`${sign} ${fromM}`}
            class={sign}
            d={`M${MIDDLE} ${onStrip(groundOf(fromM))}V${onStrip(groundOf(toM))}`}
          />
        )),
      )}
      {seen.map((mark) => (
        <g key={`${mark.code} ${mark.wireM}`} transform={`translate(${MIDDLE} ${yOf(mark.groundM)})`}>
          {mark.code === 'tag' && (
            <>
              <path class="sign" d={TAG_SIGN} />
              {mark.isTestPoint && <path class="rim" d={TEST_POINT_RIM} />}
              <text x="11" y="18">
                {tongue.lineNumber}/{mark.number}
              </text>
            </>
          )}
          {mark.code === 'bend' && <circle class="sign" r={BEND_RADIUS} />}
          {mark.code === 'splice' && <path class="sign" d={SPLICE_SIGN} />}
          {mark.code === 'crossing' && <path class="crossed" d="M-22 -2H30M-22 2H30" />}
        </g>
      ))}
      {accuracyM !== null && <circle class="unsure" cx={MIDDLE} cy={HERE} r={accuracyM / M_PER_UNIT} />}
      <circle class="here" cx={MIDDLE} cy={HERE} r="6" />
    </svg>
  )
}
