import type { ReadonlySignal } from '@preact/signals'
import { isolated } from '../../isolated'
import type { UnitSystem } from '../../words/units'
import { PlanPicture } from '../plan-picture'
import { PICTURE_MM } from '../scene/scene'
import type { Block } from './block'
import { BlockView } from './block-view'
import type { SheetCode } from './sheet-code'
import { datumWords } from './sheet-head'

/** Stands at the foot of every sheet: the few words that must be with the crew whichever sheet they hold. */
const STANDING_CAUTION =
  'Nobody cranks or switches ringing on while ends are bare: it shocks. Keep wire and tools clear of power lines. ' +
  'Off the line and down from height before thunder. Local code and licensed people govern.'

interface Props {
  readonly title: string
  readonly about: string
  /** Drawn to its edges. */
  readonly isBare: boolean
  readonly isOverfull: boolean
  readonly planTitle: string
  readonly fingerprint: string
  readonly date: string
  readonly revision: ReadonlySignal<string>
  /** How many things in the plan can hardly be meant. */
  readonly doubts: number
  readonly system: UnitSystem
  readonly blocks: readonly Block[]
  readonly code?: SheetCode
  readonly widthMm: number
  readonly number: number
  readonly of: number
}

/** One sheet of paper. */
export function SheetPage(props: Props) {
  const {
    title,
    about,
    isBare,
    isOverfull,
    planTitle,
    fingerprint,
    date,
    revision,
    doubts,
    system,
    blocks,
    code,
    widthMm,
    number,
    of,
  } = props
  const label = `${[title, about].filter(Boolean).join(', ')}, sheet ${number} of ${of}`
  const body = (
    <div class="body">
      {blocks.map((block, i) => (
        <BlockView key={i} block={block} widthMm={widthMm} />
      ))}
    </div>
  )
  if (isBare) {
    return (
      <section class="sheet bare" aria-label={label}>
        {body}
      </section>
    )
  }
  return (
    <section class={isOverfull ? 'sheet overfull' : 'sheet'} aria-label={label}>
      <header class={code ? 'with-code' : undefined}>
        <div>
          <h1>{title}</h1>
          {about && <p>{about}</p>}
          <p>{`${isolated(planTitle)} · sheet ${number} of ${of}`}</p>
        </div>
        <div class="basis">
          <Basis date={date} revision={revision} fingerprint={fingerprint} />
          <p>{datumWords(system)}</p>
          {doubts > 0 && (
            <p>
              <strong>Unresolved doubts: {doubts}</strong>
            </p>
          )}
        </div>
        {code ? <OwnCode {...code} /> : <PlanCode />}
      </header>
      {body}
      <footer>
        <strong>Caution.</strong> {STANDING_CAUTION}
      </footer>
    </section>
  )
}

/** Which plan it is, in a small picture. */
const PlanCode = () => (
  <svg
    class="plan-picture"
    viewBox={`0 0 ${PICTURE_MM} ${PICTURE_MM}`}
    role="img"
    aria-label="The plan's title, revision and fingerprint, for a camera"
  >
    <PlanPicture at={[0, 0]} sizeMm={PICTURE_MM} />
  </svg>
)

/** What opens the plan or a line of it, in a larger one. */
const OwnCode = ({ picture: { side, path }, label }: SheetCode) => (
  <svg class="own-code" viewBox={`0 0 ${side} ${side}`} role="img" aria-label={label}>
    <path d={path} style={{ fill: '#000', stroke: 'none' }} shape-rendering="crispEdges" />
  </svg>
)

/** By itself, so that a letter typed draws this line anew and not the sheet. */
function Basis({ date, revision, fingerprint }: Pick<Props, 'date' | 'revision' | 'fingerprint'>) {
  const told = [date, revision.value && `revision ${revision.value}`, `plan ${fingerprint}`]
  return <p>{told.filter(Boolean).join(' · ')}</p>
}
