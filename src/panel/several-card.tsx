import { copySeveral, wireSeveral } from '../plan/several-edits'
import { newCircuitId, newLineId, newStationId } from '../state/new-id'
import { deleteSeveral } from '../state/removals'
import type { Selection } from '../state/selection'
import type { Store } from '../state/store'
import { formatCount } from '../words/units'
import { SelectField } from './select-field'

/** No id of a wire: none holds a blank. */
const MIXED = ' '
/** How far a copy lies from what was copied, degrees: some hundred metres, so that both are seen. */
const ASIDE_DEG = 0.001

/** Stations and lines that are selected together: what can be done with all of them at once. */
export function SeveralCard({
  store,
  several,
}: {
  store: Store
  several: Extract<Selection, { readonly kind: 'several' }>
}) {
  const plan = store.plan.value
  const lines = several.lines.flatMap((id) => plan.lines.get(id) ?? [])
  const wires = new Set(lines.map(({ wire }) => wire))
  const duplicate = () => {
    if (!store.mayEdit()) return
    const ids = { station: newStationId, line: newLineId, circuit: newCircuitId }
    const copy = copySeveral(plan, several, ([lon, lat]) => [lon + ASIDE_DEG, lat - ASIDE_DEG], ids)
    store.edit(() => copy.plan)
    store.selection.value = { kind: 'several', id: 'several', ...copy.copies }
    store.tell(`${countsOf(copy.copies)} copied: drag them where they belong`)
  }
  return (
    <>
      <h1>{countsOf(several)}</h1>
      <p class="soft">Drag one of them to move all. Click with Shift to take in more, or to let one go.</p>
      {lines.length > 0 && (
        <SelectField
          label="Wire of all lines"
          value={wires.size === 1 ? [...wires][0]! : MIXED}
          options={[
            ...(wires.size > 1 ? [{ value: MIXED, text: 'several' }] : []),
            ...store.choices.wires.value.map(({ id, name }) => ({ value: id, text: name })),
          ]}
          onCommit={(wire) =>
            wire !== MIXED &&
            store.edit((before) => wireSeveral(store.withChosen(before, 'wires', wire), several, wire))
          }
        />
      )}
      <p>
        <button type="button" onClick={duplicate}>
          Duplicate them
        </button>
      </p>
      <button type="button" class="harm" onClick={() => deleteSeveral(store, several)}>
        Delete them
      </button>
    </>
  )
}

const countsOf = ({ stations, lines }: { stations: readonly unknown[]; lines: readonly unknown[] }) =>
  [
    stations.length > 0 ? formatCount(stations.length, 'station') : '',
    lines.length > 0 ? formatCount(lines.length, 'line') : '',
  ]
    .filter(Boolean)
    .join(' and ')
