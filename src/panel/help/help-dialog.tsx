import '../wide-dialog.css'
import './help.css'
import { useEffect, useRef } from 'preact/hooks'
import type { Store } from '../../state/store'
import { KEYS } from './keys'
import { TOPICS } from './topics'

/** Answers in plain words, and every key. It opens at the question that the card on show asks first. */
export function HelpDialog({ store }: { store: Store }) {
  const dialog = useRef<HTMLDialogElement>(null)
  const opensAt =
    store.selection.value?.kind === 'circuit' ? 'What do works, thin and fails mean?' : TOPICS[0]!.ask
  useEffect(() => {
    if (dialog.current && !dialog.current.open) dialog.current.showModal()
    dialog.current?.querySelector('details[open]')?.scrollIntoView({ block: 'nearest' })
  }, [])
  const close = () => {
    store.helpIsOpen.value = false
  }
  return (
    <dialog ref={dialog} class="wide-dialog help" aria-labelledby="help-title" onClose={close}>
      <header>
        <h1 id="help-title">Help</h1>
        <button type="button" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </header>
      {TOPICS.map(({ ask, answer }) => (
        <details key={ask} class="on-demand" open={ask === opensAt}>
          <summary>{ask}</summary>
          {answer.map((paragraph) => (
            <p key={paragraph}>{paragraph}</p>
          ))}
        </details>
      ))}
      <h2>Keys</h2>
      <p class="soft">Keys of one letter, digit or sign can be turned off under View.</p>
      {KEYS.map(({ where, keys }) => (
        <section key={where}>
          <h3>{where}</h3>
          <dl>
            {keys.map(([press, does]) => (
              <>
                <dt>{press}</dt>
                <dd>{does}</dd>
              </>
            ))}
          </dl>
        </section>
      ))}
    </dialog>
  )
}
