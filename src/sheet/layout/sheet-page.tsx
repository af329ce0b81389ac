import type { PaperSource } from '../paper-source'
import type { Block } from './block'
import { BlockView } from './block-view'

/** Stands at the foot of every sheet: the few words that must be with the crew whichever sheet they hold. */
const STANDING_CAUTION =
  'Nobody cranks or switches ringing on while ends are bare: it shocks. Keep wire and tools clear of power lines. ' +
  'Off the line and down from height before thunder. Local code and licensed people govern.'

const UNITS = { metric: 'lengths in m and km', us: 'lengths in ft and miles' } as const

/** One sheet of paper. */
export function SheetPage({
  title,
  about,
  source: { plan, date, revision, system },
  blocks,
  widthMm,
  number,
  of,
}: {
  title: string
  about: string
  source: PaperSource
  blocks: readonly Block[]
  widthMm: number
  number: number
  of: number
}) {
  return (
    <section
      class="sheet"
      aria-label={`${[title, about].filter(Boolean).join(', ')}, sheet ${number} of ${of}`}
    >
      <header>
        <div>
          <h1>{title}</h1>
          {about && <p>{about}</p>}
          <p>{`${plan.title} · sheet ${number} of ${of}`}</p>
        </div>
        <div class="basis">
          <p>{[date, revision && `revision ${revision}`].filter(Boolean).join(' · ')}</p>
          <p>{`Datum WGS 84, true north up, ${UNITS[system]}`}</p>
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
