import { HAZARDS } from '../hazard/kinds'
import { undirected } from '../isolated'
import { renameHazard, setHazardKind } from '../plan/hazard-edits'
import { HAZARD_KINDS } from '../plan/hazard-schema'
import type { HazardId } from '../plan/id'
import { deleteHazard } from '../state/removals'
import type { Store } from '../state/store'
import { SelectField } from './select-field'
import { TextField } from './text-field'

/** One hazard: what it is and what it is called. */
export function HazardCard({ store, id }: { store: Store; id: HazardId }) {
  const hazard = store.plan.value.hazards.get(id)
  if (!hazard) return null
  const kind = HAZARDS[hazard.hazard].word
  return (
    <>
      <h1>
        <bdi>{undirected(hazard.name) || kind.charAt(0).toUpperCase() + kind.slice(1)}</bdi>
      </h1>
      <SelectField
        label="What is it?"
        value={hazard.hazard}
        options={HAZARD_KINDS.map((each) => ({ value: each, text: HAZARDS[each].word }))}
        onCommit={(next) => store.edit((before) => setHazardKind(before, id, next))}
      />
      <TextField
        label="Name"
        value={hazard.name}
        onCommit={(name) => store.edit((before) => renameHazard(before, id, name))}
      />
      <p class="soft">Where lines cross it stands under “What could hurt someone?” of the whole plan.</p>
      <button type="button" class="harm" onClick={() => deleteHazard(store, id)}>
        Delete the {kind}
      </button>
    </>
  )
}
