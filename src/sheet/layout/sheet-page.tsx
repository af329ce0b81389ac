import type { Block } from './block'
import { BlockView } from './block-view'
import { bodyOf, type PaperSize } from './paper-size'

/** What stands at the head of every sheet of one paper. */
export interface SheetHead {
  readonly paper: string
  readonly plan: string
  /** ISO 8601 day. */
  readonly date: string
  /** Datum, which north the bearings count from, units: one line each. */
  readonly basis: readonly string[]
}

/** Stands at the foot of every sheet: the few words that must be with the crew whichever sheet they hold. */
const STANDING_CAUTION =
  'Nobody cranks or switches ringing on while ends are bare: it shocks. Keep wire and tools clear of power lines. ' +
  'Off the line and down from height before thunder. Local code and licensed people govern.'

/** One sheet of paper. */
export function SheetPage({
  head,
  blocks,
  size,
  number,
  of,
}: {
  head: SheetHead
  blocks: readonly Block[]
  size: PaperSize
  number: number
  of: number
}) {
  const { widthMm } = bodyOf(size)
  return (
    <section class="sheet" aria-label={`${head.paper}, sheet ${number} of ${of}`}>
      <header>
        <div>
          <h1>{head.paper}</h1>
          <p>{`${head.plan} · ${head.date} · sheet ${number} of ${of}`}</p>
        </div>
        <div class="basis">
          {head.basis.map((line) => (
            <p key={line}>{line}</p>
          ))}
        </div>
      </header>
      <div class="body">
        {blocks.map((block, i) => (
          <BlockView key={i} block={block} widthMm={widthMm} />
        ))}
      </div>
      <footer>
        <strong>Caution.</strong> {STANDING_CAUTION}
      </footer>
    </section>
  )
}
