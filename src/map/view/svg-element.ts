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
