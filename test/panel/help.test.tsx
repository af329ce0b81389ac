// @vitest-environment page
import { render } from 'preact'
import { afterEach, expect, test } from 'vitest'
import { HelpDialog } from '../../src/panel/help/help-dialog'
import { TOPICS } from '../../src/panel/help/topics'
import { createStore } from '../../src/state/store'

afterEach(() => {
  render(null, document.body)
  document.body.innerHTML = ''
})

/** Opens the help beside a panel of two questions, with the cursor in one of them. */
function openedWith(question: string, title = 'Where is it?') {
  const store = createStore()
  document.body.innerHTML = `<aside class="panel">
    <section class="question"><h2>${title}</h2><input></section>
    <section class="question"><h2>${question}</h2><input id="here"></section></aside><div id="help"></div>`
  document.getElementById('here')?.focus()
  render(<HelpDialog store={store} />, document.getElementById('help')!)
  return document.querySelector('details[open] summary')?.textContent
}

test('help opens at the question that the cursor is in, or at one that answers it as well', () => {
  expect(openedWith('How sure is it?')).toBe('How sure is it?')
  expect(openedWith('Do we know the ground?')).toBe('What ground does it cross?')
})

test('help opens at drawing a net where nothing is asked yet', () => {
  expect(openedWith('Something that no topic is about')).toBe('How do I draw a net?')
})

test('each question leads to one topic', () => {
  const all = TOPICS.flatMap(({ ask, also = [] }) => [ask, ...also])
  expect(new Set(all).size).toBe(all.length)
})
