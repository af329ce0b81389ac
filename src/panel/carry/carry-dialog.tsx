import '../wide-dialog.css'
import './carry.css'
import type { ComponentChildren } from 'preact'
import { useEffect, useId, useRef } from 'preact/hooks'

interface Props {
  readonly title: string
  readonly onClose: () => void
  /** Stands at the edge, and leaves the map in sight: what the dialog is about is shown there. */
  readonly letsMapShow?: boolean
  /** The map can be used meanwhile. */
  readonly isBeside?: boolean
  readonly children: ComponentChildren
}

/** A dialog about a plan that goes out or comes in. */
export function CarryDialog({ title, onClose, letsMapShow = false, isBeside = false, children }: Props) {
  const dialog = useRef<HTMLDialogElement>(null)
  const id = useId()
  useEffect(() => {
    if (dialog.current?.open === false) isBeside ? dialog.current.show() : dialog.current.showModal()
  }, [])
  return (
    <dialog
      ref={dialog}
      class={`wide-dialog carry${letsMapShow ? ' at-edge' : ''}${isBeside ? ' beside' : ''}`}
      aria-labelledby={id}
      onClose={onClose}
    >
      {/* No banner of the page, as a header would be where the dialog is not modal. */}
      <div class="head">
        <h1 id={id}>{title}</h1>
        <button type="button" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </div>
      {children}
    </dialog>
  )
}
