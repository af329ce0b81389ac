import '../wide-dialog.css'
import './help.css'
import { useEffect, useRef, useState } from 'preact/hooks'
import type { Store } from '../../state/store'
import { KEYS } from './keys'
import { TOPICS } from './topics'

/** So much of a question must be in sight below the verdict, which stays there. */
const SEEN_PX = 160

/** What a person asks first of what is selected. */
const FIRST: Readonly<Record<string, string>> = {
  circuit: 'What do works, thin and fails mean?',
  line: 'What do works, thin and fails mean?',
  station: 'How do I give a place?',
  hazard: 'What could hurt someone?',
}

const topicOf = (question: string | undefined) =>
  TOPICS.find(({ ask, also }) => question !== undefined && (ask === question || also?.includes(question)))

/** The question of the panel that the cursor or the pointer is in; else, once one has scrolled, the first that is in sight. */
function questionAtHand(): string | undefined {
  const panel = document.querySelector('.panel')
  const titleOf = (question: Element | null | undefined) =>
    question?.querySelector('h2')?.textContent ?? undefined
  const held = document.activeElement?.closest('.panel .question') ?? panel?.querySelector('.question:hover')
  if (held || !panel?.scrollTop) return titleOf(held)
  const top = panel.getBoundingClientRect().top
  return titleOf(
    [...panel.querySelectorAll('.question')].find(
      (each) => each.getBoundingClientRect().bottom > top + SEEN_PX,
    ),
  )
}

/** Answers in plain words, and every key. It opens at the question that the person has before them. */
export function HelpDialog({ store }: { store: Store }) {
  const dialog = useRef<HTMLDialogElement>(null)
  // Decided once: what is pointed at is another thing as soon as the help lies over it.
  const [opensAt] = useState(
    () => topicOf(questionAtHand()) ?? topicOf(FIRST[store.selection.peek()?.kind ?? '']) ?? TOPICS[0],
  )
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
        <details key={ask} class="on-demand" open={ask === opensAt?.ask}>
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
