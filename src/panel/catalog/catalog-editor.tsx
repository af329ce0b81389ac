import { freeId } from '../../catalog/free-id'
import { tallyOf } from '../../catalog/source-tally'
import { withSources } from '../../catalog/sourced'
import type { Supply } from '../../catalog/supply'
import type { TelephoneSet } from '../../catalog/telephone-set'
import type { Wire } from '../../catalog/wire'
import {
  putSet,
  putSupply,
  putWire,
  removeOwnSet,
  removeOwnSupply,
  removeOwnWire,
} from '../../plan/catalog-edits'
import { usedEntries } from '../../plan/used-entries'
import type { Store } from '../../state/store'
import { tallySentence } from '../../words/source-words'
import { OnDemand, Question } from '../question'
import { SelectField } from '../select-field'
import { FORMS } from './entry-figures'
import { EntryForm } from './entry-form'
import { OwnEntries } from './own-entries'
import { WireFromCutEnd, WireFromMeter } from './own-wire-form'
import { SpoolsField } from './spools-field'

const TALKS: readonly { value: TelephoneSet['talk']; text: string }[] = [
  { value: 'local', text: 'from a battery of its own' },
  { value: 'common', text: 'from the line’s battery' },
  { value: 'sound', text: 'from the voice alone' },
]

const KINDS: readonly { value: Supply['kind']; text: string }[] = [
  { value: 'feed', text: 'bridged across the pair' },
  { value: 'series', text: 'in one leg of the set' },
  { value: 'ringdown', text: 'ringdown unit between lines' },
  { value: 'exchange', text: 'automatic exchange' },
  { value: 'board', text: 'board worked by hand' },
]

/** Wires, sets and supplies of the plan's own: each begins as a copy of one that is known. */
export function CatalogEditor({ store }: { store: Store }) {
  const own = store.plan.value.catalog
  const count = own.wires.length + own.sets.length + own.supplies.length
  const used = usedEntries(store.plan.value, store.catalog.value).map(withSources)
  const put = (wire: Wire) => store.tryEdit((plan) => putWire(plan, wire))
  const freeWireId = (id: string) => freeId(id, store.choices.wires.value)
  const putOneSet = (set: TelephoneSet) => store.tryEdit((plan) => putSet(plan, set))
  const putOneSupply = (supply: Supply) => store.tryEdit((plan) => putSupply(plan, supply))
  return (
    <Question ask="What do we work with?">
      <p>
        {count === 0
          ? 'The wires, sets and supplies that the handbooks describe. Yours differ? Copy one and change its figures.'
          : `The handbooks’ wires, sets and supplies, and ${count} of this plan’s own.`}
      </p>
      {used.length > 0 && <p>This plan rests on {tallySentence(tallyOf(used))}</p>}
      <OnDemand title="Wires">
        <OwnEntries
          store={store}
          kind="wires"
          known={store.choices.wires.value}
          own={own.wires}
          onPut={put}
          onRemove={(id) => store.tryEdit((plan) => removeOwnWire(plan, id))}
          form={(wire) => (
            <>
              <EntryForm store={store} entry={wire} {...FORMS.wire} onPut={put} />
              <SpoolsField store={store} wire={wire} onPut={put} />
            </>
          )}
          more={(wire) => <WireFromMeter store={store} freeId={freeWireId} onPut={put} wire={wire} />}
        />
        <WireFromCutEnd store={store} freeId={freeWireId} onPut={put} />
      </OnDemand>
      <OnDemand title="Sets">
        <OwnEntries
          store={store}
          kind="sets"
          known={store.choices.sets.value}
          own={own.sets}
          onPut={putOneSet}
          onRemove={(id) => store.tryEdit((plan) => removeOwnSet(plan, id))}
          form={(set) => (
            <>
              <SelectField
                label="Speech is powered"
                value={set.talk}
                options={TALKS}
                onCommit={(talk) => void putOneSet({ ...set, talk })}
              />
              <EntryForm store={store} entry={set} {...FORMS.set} onPut={putOneSet} />
            </>
          )}
        />
      </OnDemand>
      <OnDemand title="Supplies">
        <OwnEntries
          store={store}
          kind="supplies"
          known={store.choices.supplies.value}
          own={own.supplies}
          onPut={putOneSupply}
          onRemove={(id) => store.tryEdit((plan) => removeOwnSupply(plan, id))}
          form={(supply) => (
            <>
              <SelectField
                label="It stands"
                value={supply.kind}
                options={KINDS}
                onCommit={(kind) => void putOneSupply({ ...supply, kind })}
              />
              <EntryForm store={store} entry={supply} {...FORMS.supply} onPut={putOneSupply} />
            </>
          )}
        />
      </OnDemand>
    </Question>
  )
}
