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
      <span class={`together-mark ${sharing.box?.standing.value ?? 'together'}`} aria-hidden="true" />
      <span class="words">{standingWords(sharing)}</span>
      {torn > 0 && <strong>{formatCount(torn, 'thing')} to choose</strong>}
      {said > 0 && <strong>{formatCount(said, 'note')}</strong>}
    </button>
  )
}

export function standingWords({ box, others, mayWrite }: Sharing): string {
  const count = others.value.length
  if (!box) return count > 0 ? `One plan in ${count + 1} windows` : 'One plan in several windows'
  const isReader = !mayWrite ? 'Only reading. ' : ''
  const company = `${isReader}${count > 0 ? `With ${formatCount(count, 'other')}` : 'Shared, nobody else here now'}`
  const waiting = box.waiting.value
  switch (box.standing.value) {
    case 'coming':
      return 'Reaching the box …'
    case 'together':
      return waiting > 0 ? `${company}; ${formatCount(waiting, 'step')} of yours not on the box yet` : company
    case 'apart':
      return `The box is not reached: work on. ${waiting > 0 ? `${formatCount(waiting, 'step')} of yours ${waiting === 1 ? 'waits' : 'wait'} here` : 'Nothing of yours waits'}`
    case 'moved':
      return 'Shut out: the plan has new keys. Ask for a new invitation'
    case 'too-large':
      return 'The plan is too large for the box: what you change stays here'
    case 'refused':
      return 'The box lets nobody in with these keys: ask for a new invitation'
  }
}
