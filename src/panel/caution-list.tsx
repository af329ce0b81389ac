import type { Caution } from '../report/report'

/** What could hurt someone, in the report's own words. */
export function CautionList({ cautions }: { cautions: readonly Caution[] }) {
  if (cautions.length === 0)
    return (
      <p>
        Nothing that is drawn yet. The local code governs all work on lines; where it asks for a licensed
        person, get one.
      </p>
    )
  return (
    <ul class="cautions">
      {cautions.map((caution) => (
        <li key={`${caution.code} ${caution.where} ${caution.text}`}>{caution.text}</li>
      ))}
    </ul>
  )
}
