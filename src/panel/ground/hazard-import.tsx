import { useSignal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import {
  type FeatureProperty,
  fewValued,
  type HazardFeatures,
  type HazardMapping,
  hazardsFrom,
  kindOfFeature,
  likelyKind,
  tellingProperties,
} from '../../hazard/hazard-features'
import { HAZARDS } from '../../hazard/kinds'
import { undirected } from '../../isolated'
import { addHazards } from '../../plan/hazard-edits'
import { HAZARD_KINDS } from '../../plan/hazard-schema'
import type { HazardId } from '../../plan/id'
import type { HazardKind, Plan } from '../../plan/plan'
import { newHazardId } from '../../state/new-id'
import type { Store } from '../../state/store'
import { formatCount } from '../../words/units'
import { SelectField, SelectFieldOf } from '../select-field'

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
      <h1 id="import-title">
        What is in <bdi>{undirected(found.name)}</bdi>?
      </h1>
      <Mapping key={found.name} store={store} features={found.features} onDone={close} />
    </dialog>
  )
}

interface MappingProps {
  readonly store: Store
  readonly features: HazardFeatures
  readonly onDone: () => void
}

/** All the properties that most likely tell kinds apart, together. */
const TOGETHER = '*'

function Mapping({ store, features, onDone }: MappingProps) {
  const telling = tellingProperties(features)
  const chosen = useSignal(telling.length > 1 ? TOGETHER : (telling[0]?.name ?? ''))
  const nameFrom = useSignal(features.properties.some(({ name }) => name === 'name') ? 'name' : '')
  const given = useSignal<ReadonlyMap<string, HazardKind | ''>>(new Map())
  const ofAll = useSignal<HazardKind | ''>('')
  const asked =
    chosen.value === TOGETHER ? telling : fewValued(features).filter(({ name }) => name === chosen.value)
  const kindOf = (property: string, value: string): HazardKind | '' =>
    given.value.get(traitOf(property, value)) ?? likelyKind(property, value) ?? ''
  const mapping: HazardMapping = {
    properties: asked.map(({ name }) => name),
    kindOf: (property, value) => kindOf(property, value) || undefined,
    ofAll: ofAll.value || undefined,
    nameProperty: nameFrom.value,
  }
  const count = features.features.filter((feature) => kindOfFeature(feature, mapping)).length
  const add = () => {
    store.edit((plan) => addHazards(plan, hazardsFrom(features, mapping, newIdsFor(plan))))
    onDone()
  }

  return (
    <>
      <p>
        {formatCount(features.features.length, 'line or area', 'lines and areas')}.
        {features.leftOut > 0 && ` ${formatCount(features.leftOut, 'other feature')} can be no hazard.`} Say
        what each is: nothing is added that you do not name.
      </p>
      <SelectFieldOf
        label="Told apart by"
        of={chosen}
        options={[
          ...(telling.length > 1
            ? [{ value: TOGETHER, text: telling.map(({ name }) => name).join(', ') }]
            : []),
          ...fewValued(features).map(({ name }) => ({ value: name, text: name })),
          { value: '', text: 'nothing: all are of one kind' },
        ]}
      />
      <SelectFieldOf
        label="Names from"
        of={nameFrom}
        options={[
          { value: '', text: 'no names' },
          ...features.properties.map(({ name }) => ({ value: name, text: name })),
        ]}
      />
      {asked.length > 0 ? (
        <Kinds
          properties={asked}
          kindOf={kindOf}
          onKind={(property, value, kind) => {
            given.value = new Map(given.value).set(traitOf(property, value), kind)
          }}
        />
      ) : (
        <SelectFieldOf label="All of them are" of={ofAll} options={KIND_OPTIONS} />
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

const traitOf = (property: string, value: string) => `${property}: ${value}`

/** New ids, none of them twice. */
function newIdsFor(plan: Plan): () => HazardId {
  const taken = new Set<HazardId>()
  return () => {
    let id = newHazardId(plan)
    while (taken.has(id)) id = newHazardId(plan)
    taken.add(id)
    return id
  }
}

const KIND_OPTIONS: readonly { readonly value: HazardKind | ''; readonly text: string }[] = [
  { value: '', text: 'left out' },
  ...HAZARD_KINDS.map((kind) => ({ value: kind, text: HAZARDS[kind].word })),
]

function Kinds({
  properties,
  kindOf,
  onKind,
}: {
  properties: readonly FeatureProperty[]
  kindOf: (property: string, value: string) => HazardKind | ''
  onKind: (property: string, value: string, kind: HazardKind | '') => void
}) {
  const label = (property: string, value: string) =>
    properties.length > 1 ? traitOf(property, value) : value
  return (
    <fieldset>
      <legend>What does each mean?</legend>
      {properties.flatMap(({ name, values }) =>
        values.map(({ value, count }) => (
          <SelectField
            key={traitOf(name, value)}
            label={`${label(name, value)} (${count})`}
            value={kindOf(name, value)}
            options={KIND_OPTIONS}
            onCommit={(kind) => onKind(name, value, kind)}
          />
        )),
      )}
    </fieldset>
  )
}
