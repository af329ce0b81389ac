import type { LineHours } from '../../materials/hours'
import type { LineId } from '../../plan/id'
import type { Store } from '../../state/store'
import { formatHours } from '../../words/work-words'
import { Question } from '../question'

/** How long one crew takes over the line, and over what. */
export function LineHoursQuestion({ store, id }: { store: Store; id: LineId }) {
  const { hours } = store.report.value
  const own = hours.lines.find(({ line }) => line === id)
  if (!own) return null
  return (
    <Question ask="How long will it take?">
      <p>
        {formatHours(own.totalH)} for one crew of {hours.crew}
        {hours.isNight ? ' by night' : ''}; recovery {formatHours(own.recoveryH)}.
      </p>
      <p class="soft">
        {partsSentence(own)}
        {own.crew > hours.crew && ` Its lay takes ${own.crew} people: fewer are slower in proportion.`}
      </p>
    </Question>
  )
}

/** `By day: laying 2 h, climbing 10 min, crossings 4 min.` */
function partsSentence({ layingH, climbingH, crossingsH, splicesH, carryingH }: LineHours): string {
  const parts = [
    { what: 'laying', h: layingH },
    { what: 'climbing', h: climbingH },
    { what: 'crossings', h: crossingsH },
    { what: 'splices', h: splicesH },
    { what: 'carrying and walking', h: carryingH },
  ].filter(({ h }) => h * 60 >= 0.5)
  return `By day: ${parts.map(({ what, h }) => `${what} ${formatHours(h)}`).join(', ')}.`
}
