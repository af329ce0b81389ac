import { type ComponentChild, render } from 'preact'
import { act } from 'preact/test-utils'

/** A page with one component on it, in the place of the one before, and the hands of a person. */
export function page(component: ComponentChild) {
  for (const before of document.body.children) act(() => render(null, before))
  const root = document.createElement('div')
  document.body.replaceChildren(root)
  act(() => render(component, root))

  const all = <T extends Element = HTMLElement>(selector: string) => [...root.querySelectorAll<T>(selector)]
  /** The control that a label names, as a screen reader finds it. */
  const control = (name: string): HTMLInputElement => {
    const label = all<HTMLLabelElement>('label').find((each) => each.textContent?.trim() === name)
    const found = label && (label.control ?? document.getElementById(label.htmlFor))
    if (!found) throw new Error(`nothing is labelled "${name}"`)
    return found as HTMLInputElement
  }
  const button = (name: string): HTMLButtonElement => {
    const found = all<HTMLButtonElement>('button').find(
      (each) => (each.getAttribute('aria-label') ?? each.textContent?.trim()) === name,
    )
    if (!found) throw new Error(`no button is called "${name}"`)
    return found
  }
  return {
    root,
    control,
    text: () => root.textContent ?? '',
    headings: () => all('h1, h2').map((heading) => heading.textContent),
    refusals: () => all('.refusal').map((refusal) => refusal.textContent),
    /** Opens every part that is shown on demand, and those in it. */
    openAll: () => {
      for (let closed = all('details:not([open])'); closed.length > 0; closed = all('details:not([open])'))
        act(() => {
          for (const details of closed) {
            details.setAttribute('open', '')
            details.dispatchEvent(new Event('toggle'))
          }
        })
    },
    press: (name: string) => act(() => button(name).click()),
    /** Types into a field and leaves it, or chooses an option. */
    give: (name: string, value: string) =>
      act(() => {
        const field = control(name)
        field.value = value
        field.dispatchEvent(new Event('change', { bubbles: true }))
      }),
    all,
  }
}
