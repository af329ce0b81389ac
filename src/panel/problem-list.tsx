import { useEffect, useRef } from 'preact/hooks'
import { undirected } from '../isolated'
import type { Store } from '../state/store'
import { formatCount } from '../words/units'

/** A file that was refused: every fault, its place, and what to do. The plan on screen has stayed. */
export function ProblemList({ store }: { store: Store }) {
  const refused = store.refusedFile.value
  const dialog = useRef<HTMLDialogElement>(null)

  useEffect(() => {
    if (refused && dialog.current && !dialog.current.open) dialog.current.showModal()
  }, [refused])

  if (!refused) return null
  const { name, problems } = refused
  const close = () => {
    store.refusedFile.value = null
  }
  return (
    <dialog ref={dialog} class="problems" aria-labelledby="problems-title" onClose={close}>
      <h1 id="problems-title">
        <bdi>{undirected(name)}</bdi> was not opened
      </h1>
      <p>
        {formatCount(problems.length, 'fault')} found in it. The plan on screen is as it was. Mend the file
        and open it again.
      </p>
      <ol>
        {problems.map((problem) => (
          <li key={`${problem.at} ${problem.message}`}>
            {problem.at && <code>{problem.at}</code>} {problem.message}
          </li>
        ))}
      </ol>
      <button type="button" onClick={close}>
        Close
      </button>
    </dialog>
  )
}
