import type { LineId } from '../../plan/id'
import type { Plan } from '../../plan/plan'
import type { Way } from '../../plan/route-edits'
import { type RouteFigures, routeFigures } from '../../report/route-figures'
import type { NearRoute } from '../../route/near-routes'
import type { Store } from '../../state/store'
import { formatLengthM, formatRunM } from '../../words/units'
import { type FigureRow, FigureRows } from './figure-rows'

interface Props {
  readonly store: Store
  readonly plan: Plan
  /** The line that goes there by hand; undefined where none does yet. */
  readonly drawn: LineId | undefined
  readonly ways: readonly NearRoute[]
  readonly shown: number
  readonly lead: (plan: Plan, way: Way) => { readonly plan: Plan; readonly line: LineId }
  readonly onShow: (index: number) => void
}

/** Ways beside each other by their figures, and beside the one that is drawn. */
export function WayTable({ store, plan, drawn, ways, shown, lead, onShow }: Props) {
  const ground = store.ground.value
  const system = store.units.value
  const hand = drawn && routeFigures(plan, drawn, ground)
  const figures = ways.map((way) => {
    const led = lead(plan, way)
    return routeFigures(led.plan, led.line, ground)
  })
  const best = ways[0]!.cost
  const rows: readonly FigureRow<RouteFigures>[] = [
    ['Along the ground', ({ groundM }) => formatRunM(groundM, system)],
    ['Wire', ({ wireM }) => formatRunM(wireM, system)],
    ['Climb', ({ climbM }) => (climbM === undefined ? 'not known' : formatLengthM(climbM, system))],
    ['Bends', ({ bends }) => String(bends)],
    ['Cautions', ({ cautions }) => String(cautions.length)],
    ['Hours to lay', ({ hours }) => hours.toFixed(1)],
  ]
  return (
    <table class="weighed nets ways">
      <thead>
        <tr>
          <th scope="row">Way</th>
          {hand && <th scope="col">Drawn</th>}
          {ways.map((_, i) => (
            <th key={i} scope="col">
              <button
                type="button"
                aria-label={`Way ${i + 1}`}
                aria-pressed={i === shown}
                onClick={() => onShow(i)}
              >
                {i + 1}
              </button>
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        <FigureRows rows={rows} columns={hand ? [hand, ...figures] : figures} />
        {ways.length > 1 && (
          <>
            <tr>
              <th scope="row">Dearer than way 1</th>
              {hand && <td />}
              {ways.map(({ cost }, i) => (
                <td key={i}>{i === 0 ? '–' : `${Math.round((cost / best - 1) * 100)} %`}</td>
              ))}
            </tr>
            <tr>
              <th scope="row">Apart from the rest</th>
              {hand && <td />}
              {ways.map(({ apart }, i) => (
                <td key={i}>{i === 0 ? '–' : `${Math.round(apart * 100)} %`}</td>
              ))}
            </tr>
          </>
        )}
      </tbody>
    </table>
  )
}
