import './together.css'
import type { Sharing } from '../../share/sharing'
import type { Store } from '../../state/store'
import { formatCount } from '../../words/units'

/** At the edge of the map: with whom one works, whether the box is reached, and that something waits for a choice. */
export function TogetherStrip({ store, sharing }: { store: Store; sharing: Sharing }) {
  const torn = sharing.torn.value.length
  const said = sharing.said.value.length
  return (
    <button
      type="button"
      class="together-strip"
      onClick={() => {
        store.carrying.value = 'together'
      }}
    >
      <span class={`together-mark ${sharing.standing.value}`} aria-hidden="true" />
      <span>{standingWords(sharing)}</span>
      {torn > 0 && <strong>{formatCount(torn, 'thing')} to choose</strong>}
      {said > 0 && <strong>{formatCount(said, 'note')}</strong>}
    </button>
  )
}

export function standingWords({ standing, waiting, others }: Sharing): string {
  const with_ =
    others.value.length > 0 ? `With ${formatCount(others.value.length, 'other')}` : 'Shared, alone now'
  switch (standing.value) {
    case 'coming':
      return 'Reaching the box …'
    case 'together':
      return waiting.value > 0 ? `${with_}; ${formatCount(waiting.value, 'step')} on the way` : with_
    case 'apart':
      return `The box is not reached; ${waiting.value > 0 ? `${formatCount(waiting.value, 'step')} of yours wait here` : 'nothing of yours waits'}`
    case 'refused':
      return 'The box lets nobody in with these keys'
  }
}
