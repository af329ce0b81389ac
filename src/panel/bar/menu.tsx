import type { ComponentChildren } from 'preact'
import { useId } from 'preact/hooks'

interface Props {
  readonly title: string
  readonly hint: string
  readonly onOpen?: () => void
  readonly children: ComponentChildren
}

/** A button that opens a sheet of choices; a click elsewhere or Escape closes it. */
export function Menu({ title, hint, onOpen, children }: Props) {
  const id = useId()
  return (
    <>
      <button type="button" title={hint} popovertarget={id}>
        {title}
      </button>
      <section
        id={id}
        class="menu"
        popover="auto"
        aria-label={hint}
        onToggle={(event) => event.newState === 'open' && onOpen?.()}
      >
        {children}
      </section>
    </>
  )
}

/** Closes the menu that an element stands in. */
export const closeMenuOf = (element: Element): void => {
  element.closest<HTMLElement>('[popover]')?.hidePopover()
}
