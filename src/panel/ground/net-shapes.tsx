import type { CircuitId } from '../../plan/id'
import type { Plan } from '../../plan/plan'
import type { NetFigures } from '../../report/net-figures'
import type { SuggestedNet } from '../../route/suggest-nets'
import type { Store } from '../../state/store'
import { formatMassKg, formatRunM } from '../../words/units'
import { VerdictMark } from '../verdict-mark'
import { type FigureRow, FigureRows } from './figure-rows'

/** A board is a star with a board or an exchange in its middle. */
export type ShapeName = SuggestedNet['shape'] | 'board'

/** One shape, drawn into the plan, and what it comes to. */
export interface Shape {
  readonly shape: ShapeName
  /** Of a ring: how far its lines keep apart, and where two do not. */
  readonly apart: SuggestedNet['apart']
  readonly plan: Plan
  readonly circuit: CircuitId
  readonly ways: Store['suggested']['value']
  readonly figures: NetFigures
}

export const SHAPE_WORDS: Readonly<Record<ShapeName, string>> = {
  tree: 'Tree',
  star: 'Star',
  ring: 'Ring',
  board: 'Board',
}

/** The shapes beside one another, each with its wire and its verdict. */
export function Shapes({
  store,
  shapes,
  shown,
  onShow,
}: {
  store: Store
  shapes: readonly Shape[]
  shown: ShapeName
  onShow: (shape: Shape) => void
}) {
  const system = store.units.value
  const rows: readonly FigureRow<NetFigures>[] = [
    ['Wire', ({ wireM }) => formatRunM(wireM, system)],
    ['Weight', ({ kg }) => formatMassKg(kg, system)],
    ['Spools', ({ spools }) => String(spools)],
    ['Splices', ({ splices }) => String(splices)],
    ['Cautions', ({ cautions }) => String(cautions)],
  ]
  const hasSets = shapes.some(({ plan, circuit }) => (plan.circuits.get(circuit)?.sets.size ?? 0) > 1)
  return (
    <table class="weighed nets">
      <thead>
        <tr>
          <td />
          {shapes.map((each) => (
            <th key={each.shape} scope="col">
              <button type="button" aria-pressed={each.shape === shown} onClick={() => onShow(each)}>
                {SHAPE_WORDS[each.shape]}
              </button>
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        <FigureRows rows={rows} columns={shapes.map(({ figures }) => figures)} />
        {hasSets &&
          (['verdict', 'worst'] as const).map((when) => (
            <tr key={when}>
              <th scope="row">{when === 'verdict' ? 'Today' : 'At worst'}</th>
              {shapes.map(({ shape, plan, circuit, figures }) => (
                <td key={shape}>
                  {(plan.circuits.get(circuit)?.sets.size ?? 0) > 1 && (
                    <VerdictMark verdict={figures[when]} />
                  )}
                </td>
              ))}
            </tr>
          ))}
      </tbody>
    </table>
  )
}
