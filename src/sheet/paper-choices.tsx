import type { Store } from '../state/store'
import { formatCount } from '../words/units'
import type { Beneath } from './beneath'
import { PAPER_SIZES } from './layout/paper-size'
import type { MadePaper } from './paper-jobs'
import { PAPER_NAMES, type PaperName, WITH_SHADES, WITH_WAYS } from './paper-names'
import { scopesOf, WHOLE_NET } from './paper-scope'
import type { Wishes } from './paper-wishes'
import { LABEL_FORMATS, labelWords } from './scene/label-format'

/** Which papers, for what part of the net, of what size, and what stands on each of them. */
export function PaperChoices({
  store,
  wishes,
  made,
  beneath,
}: {
  store: Store
  wishes: Wishes
  made: readonly MadePaper[]
  beneath: Beneath
}) {
  const { chosen, size, date, revision, scope, labels, bothSides } = wishes
  const scopes = scopesOf(store.plan.value, store.report.value, store.tongue.value)
  const isShown = (name: PaperName) =>
    (store.farAsked.value !== null || !WITH_SHADES.includes(name)) &&
    (store.besideSuggested.value.told !== null || !WITH_WAYS.includes(name))
  const keyOf = (one: object) => JSON.stringify(one)
  /** Sheets of a kind, or cards where it has those. */
  const countOf = (kind: string) => {
    const own = made.filter((paper) => paper.kind === kind)
    const [sheets, cards] = (['sheets', 'cards'] as const).map((what) =>
      own.reduce((sum, paper) => sum + paper[what].length, 0),
    ) as [number, number]
    return sheets > 0 ? `${sheets}` : cards > 0 ? formatCount(cards, 'card') : ''
  }
  return (
    <>
      <fieldset>
        <legend>Papers</legend>
        {PAPER_NAMES.filter(isShown).map((name) => (
          <span key={name} class="paper-choice">
            <label>
              <input
                type="checkbox"
                checked={chosen.value.has(name)}
                onChange={(event) => wishes.choose(name, event.currentTarget.checked)}
              />
              {name}
            </label>
            {chosen.value.has(name) && countOf(name) && <span class="paper-count">{countOf(name)}</span>}
          </span>
        ))}
        <button type="button" onClick={wishes.chooseAll} disabled={chosen.value.size === PAPER_NAMES.length}>
          All papers
        </button>
      </fieldset>
      <label>
        For
        <select
          value={keyOf(scope.value)}
          onChange={(event) => {
            const wanted = event.currentTarget.value
            scope.value = scopes.find((each) => keyOf(each.scope) === wanted)?.scope ?? WHOLE_NET
          }}
        >
          {scopes.map((each) => (
            <option key={keyOf(each.scope)} value={keyOf(each.scope)}>
              {each.words}
            </option>
          ))}
        </select>
      </label>
      <label>
        Sheet size
        <select value={size.value.name} onChange={(event) => wishes.keepSize(event.currentTarget.value)}>
          {PAPER_SIZES.map(({ name }) => (
            <option key={name}>{name}</option>
          ))}
        </select>
      </label>
      {chosen.value.has('Labels') && (
        <label>
          Labels
          <select
            value={labels.value}
            onChange={(event) => {
              labels.value = event.currentTarget.value
            }}
          >
            {LABEL_FORMATS[size.value.name].map((format) => (
              <option key={format.name} value={format.name}>
                {labelWords(format, store.units.value)}
              </option>
            ))}
          </select>
        </label>
      )}
      <label>
        <input
          type="checkbox"
          checked={bothSides.value}
          onChange={(event) => {
            bothSides.value = event.currentTarget.checked
          }}
        />
        Both sides
      </label>
      {store.maps.value.some(({ isShown, facts }) => isShown && facts) && (
        <label>
          <input
            type="checkbox"
            checked={beneath.isWanted.value}
            onChange={(event) => {
              beneath.isWanted.value = event.currentTarget.checked
            }}
          />
          Map beneath, in grey
        </label>
      )}
      <label>
        Date
        <input
          type="date"
          value={date.value}
          onChange={(event) => {
            date.value = event.currentTarget.value
          }}
        />
      </label>
      <label>
        Revision
        <input
          class="revision"
          value={revision.value}
          maxLength={12}
          onInput={(event) => {
            revision.value = event.currentTarget.value
          }}
          onChange={wishes.keepRevision}
        />
      </label>
    </>
  )
}
