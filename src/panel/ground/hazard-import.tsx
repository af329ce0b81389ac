import { useSignal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import { addHazards } from '../../plan/add-hazards'
import {
  type FeatureProperty,
  type HazardFeatures,
  hazardsFrom,
  likelyKind,
  likelyProperty,
} from '../../plan/hazard-features'
import type { HazardId } from '../../plan/id'
import { HAZARD_KINDS, type HazardKind } from '../../plan/plan'
import { HAZARD_WORDS } from '../../report/plan-words'
import { newHazardId } from '../../state/new-id'
import type { Store } from '../../state/store'
import { formatCount } from '../format'
import { SelectField } from '../select-field'

/** Values of a property that are asked about: a property with more tells no kinds apart. */
const MOST_VALUES = 40

/** What was found in a file of roads, rails, waters …, and the question what of it means what. */
export function HazardImport({ store }: { store: Store }) {
  const found = store.imported.value
  const dialog = useRef<HTMLDialogElement>(null)
  useEffect(() => {
    if (found && dialog.current && !dialog.current.open) dialog.current.showModal()
  }, [found])
  if (!found) return null
  const close = () => {
    store.imported.value = null
  }
  return (
    <dialog ref={dialog} class="problems hazard-import" aria-labelledby="import-title" onClose={close}>
      <h1 id="import-title">What is in {found.name}?</h1>
      <Mapping key={found.name} store={store} features={found.features} onDone={close} />
    </dialog>
  )
}

interface MappingProps {
  readonly store: Store
  readonly features: HazardFeatures
  readonly onDone: () => void
}

function Mapping({ store, features, onDone }: MappingProps) {
  const properties = features.properties.filter(({ values }) => values.length <= MOST_VALUES)
  const chosen = useSignal(likelyProperty({ ...features, properties })?.name ?? '')
  const nameFrom = useSignal(features.properties.some(({ name }) => name === 'name') ? 'name' : '')
  const given = useSignal<ReadonlyMap<string, HazardKind | ''>>(new Map())
  const forAll = useSignal<HazardKind | ''>('')
  const property = properties.find(({ name }) => name === chosen.value)
  const kindOf = (value: string) => given.value.get(value) ?? likelyKind(value) ?? ''
  const hazards = () => {
    const plan = store.plan.peek()
    const taken = new Set<HazardId>()
    const newId = () => {
      let id = newHazardId(plan)
      while (taken.has(id)) id = newHazardId(plan)
      taken.add(id)
      return id
    }
    const values = property?.values.map(({ value }) => value) ?? ['']
    const kinds = new Map(
      values.flatMap((value) => {
        const kind = property ? kindOf(value) : forAll.value
        return kind ? [[value, kind] as const] : []
      }),
    )
    return hazardsFrom(features, { property: chosen.value, kinds, nameProperty: nameFrom.value }, newId)
  }
  const count = property
    ? property.values.reduce((sum, each) => sum + (kindOf(each.value) ? each.count : 0), 0)
    : forAll.value
      ? features.features.length
      : 0
  const add = () => {
    store.edit((plan) => addHazards(plan, hazards()))
    onDone()
  }

  return (
    <>
      <p>
        {formatCount(features.features.length, 'line or area', 'lines and areas')}.
        {features.leftOut > 0 && ` ${formatCount(features.leftOut, 'other feature')} can be no hazard.`} Say
        what each is: nothing is added that you do not name.
      </p>
      {properties.length > 0 && (
        <SelectField
          label="Told apart by"
          value={chosen.value}
          options={[
            ...properties.map(({ name }) => ({ value: name, text: name })),
            { value: '', text: 'nothing: all are of one kind' },
          ]}
          onCommit={(name) => {
            chosen.value = name
            given.value = new Map()
          }}
        />
      )}
      <SelectField
        label="Names from"
        value={nameFrom.value}
        options={[
          { value: '', text: 'no names' },
          ...features.properties.map(({ name }) => ({ value: name, text: name })),
        ]}
        onCommit={(name) => {
          nameFrom.value = name
        }}
      />
      {property ? (
        <Kinds
          property={property}
          kindOf={kindOf}
          onKind={(value, kind) => {
            given.value = new Map(given.value).set(value, kind)
          }}
        />
      ) : (
        <SelectField
          label="All of them are"
          value={forAll.value}
          options={KIND_OPTIONS}
          onCommit={(kind) => {
            forAll.value = kind
          }}
        />
      )}
      <div class="acts">
        <button type="button" onClick={onDone}>
          Add nothing
        </button>
        <button type="button" disabled={count === 0} onClick={add}>
          Add {formatCount(count, 'hazard')}
        </button>
      </div>
    </>
  )
}

const KIND_OPTIONS: readonly { readonly value: HazardKind | ''; readonly text: string }[] = [
  { value: '', text: 'left out' },
  ...HAZARD_KINDS.map((kind) => ({ value: kind, text: HAZARD_WORDS[kind] })),
]

function Kinds({
  property,
  kindOf,
  onKind,
}: {
  property: FeatureProperty
  kindOf: (value: string) => HazardKind | ''
  onKind: (value: string, kind: HazardKind | '') => void
}) {
  return (
    <fieldset>
      <legend>What does each mean?</legend>
      {property.values.map(({ value, count }) => (
        <SelectField
          key={value}
          label={`${value} (${count})`}
          value={kindOf(value)}
          options={KIND_OPTIONS}
          onCommit={(kind) => onKind(value, kind)}
        />
      ))}
    </fieldset>
  )
}
