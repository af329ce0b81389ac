export interface ListedSheet {
  readonly title: string
  readonly about: string
  readonly number: number
  readonly of: number
}

/** The sheets that lie there, by name: choosing one leads to it. */
export function SheetIndex({
  sheets,
  onChoose,
}: {
  sheets: readonly ListedSheet[]
  onChoose: (index: number) => void
}) {
  return (
    <select
      class="sheet-index"
      aria-label="Go to a sheet"
      value=""
      onChange={(event) => {
        if (event.currentTarget.value === '') return
        onChoose(Number(event.currentTarget.value))
        event.currentTarget.value = ''
      }}
    >
      <option value="">Index</option>
      {sheets.map(({ title, about, number, of }, i) => (
        <option key={`${title} ${about} ${number}`} value={i}>
          {[title, about, of > 1 ? `sheet ${number}` : ''].filter(Boolean).join(', ')}
        </option>
      ))}
    </select>
  )
}
