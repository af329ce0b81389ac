import { DrawingView } from '../drawing/drawing-view'
import { type Block, columnsMm } from './block'
import { columnWidthsMm, headsOf, holdsFigures, showCell, type Table } from './table'

const classOf = (table: Table, column: number) => (holdsFigures(table, column) ? 'figure' : undefined)

const classesOf = ({ isWrittenIn, isDense, isLarge, isTight, isClose }: Table) =>
  [
    isWrittenIn && 'written-in',
    isDense && 'dense',
    isLarge && 'large',
    isTight && 'tight',
    isClose && 'close',
  ]
    .filter(Boolean)
    .join(' ') || undefined

function TableView({ table, continued, widthMm }: { table: Table; continued: boolean; widthMm: number }) {
  const widths = columnWidthsMm(table, widthMm)
  const heads = headsOf(table, widthMm)
  return (
    <table class={classesOf(table)}>
      {table.title && !table.isUntitled && (
        <caption>
          {table.title}
          {continued && ' (continued)'}
        </caption>
      )}
      <thead>
        <tr>
          {table.columns.map((column, i) => {
            const own = { class: classOf(table, i), style: { width: `${widths[i]!.toFixed(2)}mm` } }
            // A head without a word is none: a reader of the screen would be told of one.
            return column.head === '' ? (
              <td key={i} {...own} />
            ) : (
              <th key={i} scope="col" {...own}>
                {heads[i]}
              </th>
            )
          })}
        </tr>
      </thead>
      <tbody>
        {table.rows.map((row, k) => (
          <tr key={k}>
            {table.columns.map((column, i) => (
              <td key={column.head} class={classOf(table, i)}>
                {showCell(row[i], column)}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  )
}

/** One block, as it stands on a sheet. */
export function BlockView({ block, widthMm }: { block: Block; widthMm: number }) {
  switch (block.kind) {
    case 'heading':
      return <h2>{block.text}</h2>
    case 'text':
      return (
        <p class={block.isSmall ? 'small' : undefined}>
          {block.isBold ? <strong>{block.text}</strong> : block.text}
        </p>
      )
    case 'drawing':
      return (
        <div class="drawing" style={{ height: `${block.heightMm}mm` }}>
          {block.drawing && <DrawingView drawing={block.drawing} />}
        </div>
      )
    case 'table':
      return <TableView table={block.table} continued={block.continued ?? false} widthMm={widthMm} />
    case 'box':
      return (
        <div class={block.isSmall ? 'box small' : 'box'}>
          <strong>
            {block.title}
            {block.continued && ' (continued)'}
          </strong>
          <ul>
            {block.sentences.map((sentence, i) => (
              <li key={i}>{sentence}</li>
            ))}
          </ul>
        </div>
      )
    case 'beside':
      return (
        <div class="beside">
          {columnsMm(
            block.columns.map(({ share }) => share),
            widthMm,
          ).map((eachMm, i) => (
            <div key={i} style={{ width: `${eachMm.toFixed(2)}mm` }}>
              {block.columns[i]!.blocks.map((each, k) => (
                <BlockView key={k} block={each} widthMm={eachMm} />
              ))}
            </div>
          ))}
        </div>
      )
    case 'new-sheet':
      return null
  }
}
