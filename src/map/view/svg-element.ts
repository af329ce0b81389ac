const NAMESPACE = 'http://www.w3.org/2000/svg'

/** A new SVG element with its attributes, within a parent where one is given. */
export function svgElement<K extends keyof SVGElementTagNameMap>(
  tag: K,
  attributes: Readonly<Record<string, string | number>> = {},
  parent?: Element,
): SVGElementTagNameMap[K] {
  const element = document.createElementNS(NAMESPACE, tag)
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, String(value))
  parent?.append(element)
  return element
}

/**
 * Shows elements in a parent in place of its own. Where they are of the same kinds those stay, and take over what differs: a browser
 * styles and lays out anew only what is new to it.
 */
export function showWithin(parent: Element, next: readonly Element[]): void {
  const standing = [...parent.children]
  if (next.length === standing.length && next.every((each, i) => isAlike(each, standing[i]!)))
    for (const [i, each] of next.entries()) takeOver(standing[i]!, each)
  else parent.replaceChildren(...next)
}

const isAlike = (a: Element, b: Element): boolean =>
  a.tagName === b.tagName &&
  a.attributes.length === b.attributes.length &&
  [...a.attributes].every(({ name }) => b.hasAttribute(name)) &&
  a.childElementCount === b.childElementCount &&
  [...a.children].every((child, i) => isAlike(child, b.children[i]!))

function takeOver(standing: Element, next: Element): void {
  for (const { name, value } of next.attributes)
    if (standing.getAttribute(name) !== value) standing.setAttribute(name, value)
  if (next.childElementCount > 0)
    for (const [i, child] of [...next.children].entries()) takeOver(standing.children[i]!, child)
  else if (standing.textContent !== next.textContent) standing.textContent = next.textContent
}
