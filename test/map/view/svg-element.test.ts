// @vitest-environment page
import { expect, test } from 'vitest'
import { signAt } from '../../../src/figure/sign-at'
import { showWithin, svgElement } from '../../../src/map/view/svg-element'

const sign = (x: number, words: string) => {
  const group = svgElement('g', { class: 'tag' })
  svgElement('path', { d: `M${x} 0` }, group)
  svgElement('text', { x }, group).textContent = words
  return group
}

test('elements of the same kinds stay and say what is new; others take their place', () => {
  const parent = svgElement('g')
  showWithin(parent, [sign(1, 'one')])
  const [stands] = parent.children
  showWithin(parent, [sign(2, 'two')])
  expect(parent.children[0]).toBe(stands)
  expect(parent.innerHTML).toBe(sign(2, 'two').outerHTML)

  const more = [sign(3, 'three'), sign(4, 'four')]
  showWithin(parent, more)
  expect([...parent.children]).toEqual(more)
  const other = svgElement('g', { id: 'a' })
  showWithin(parent, [more[0]!, other])
  expect(parent.children[1]).toBe(other)
  showWithin(parent, [])
  expect(parent.childElementCount).toBe(0)
})

test('a sign is the same wherever it stands', () => {
  expect(signAt('M0 -9L9 0L0 9L-9 0Z', { x: 100, y: 50 })).toBe(
    'M100.0 41.0L109.0 50.0L100.0 59.0L91.0 50.0Z',
  )
  expect(signAt('M-7 6H7V18.5Z', { x: 10, y: -20 })).toBe('M3.0 -14.0H17.0V-1.5Z')
})
