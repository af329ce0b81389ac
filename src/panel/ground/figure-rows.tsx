/** A figure of each of several things: its name, and how it reads. */
export type FigureRow<F> = readonly [name: string, text: (figures: F) => string]

/** Rows of a table that weighs several things against each other: a figure a row, a thing a column. */
export const FigureRows = <F,>({
  rows,
  columns,
}: {
  rows: readonly FigureRow<F>[]
  columns: readonly F[]
}) => (
  <>
    {rows.map(([name, text]) => (
      <tr key={name}>
        <th scope="row">{name}</th>
        {columns.map((figures, i) => (
          <td key={i}>{text(figures)}</td>
        ))}
      </tr>
    ))}
  </>
)
