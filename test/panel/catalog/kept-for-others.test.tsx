// @vitest-environment page
import { expect, test } from 'vitest'
import { CatalogEditor } from '../../../src/panel/catalog/catalog-editor'
import { CircuitSetup } from '../../../src/panel/circuit/circuit-setup'
import { EMPTY_PLAN } from '../../../src/plan/plan'
import { createStore } from '../../../src/state/store'
import { page } from '../page'
import { NET, SMALL_PLAN } from '../small-plan'

test('a set that is kept is offered in the next plan, goes into it when it is chosen, and can be forgotten', () => {
  const store = createStore(EMPTY_PLAN)
  const editor = page(<CatalogEditor store={store} />)
  editor.openAll()
  editor.give('Known sets', 'crank-1600')
  editor
    .all<HTMLButtonElement>('button')
    .filter((each) => each.textContent === 'Copy it to change it')[1]!
    .click()
  const shown = page(<CatalogEditor store={store} />)
  shown.openAll()
  shown.press('Keep it for other plans')
  expect(shown.text()).toContain('Kept in this browser: every plan offers it.')

  store.open(SMALL_PLAN)
  const setup = page(<CircuitSetup store={store} circuit={SMALL_PLAN.circuits.get(NET)!} />)
  const kept = store.keptEntries.value.sets[0]!
  setup.give('Hut', kept.id)
  expect(store.plan.value.catalog.sets).toEqual([kept])
  expect(store.plan.value.circuits.get(NET)!.sets.get('hut' as never)).toBe(kept.id)
  store.undo()
  expect(store.settled.value).toBe(SMALL_PLAN)

  const again = page(<CatalogEditor store={store} />)
  again.openAll()
  again.press(`Forget ${kept.name}`)
  expect(store.keptEntries.value.sets).toEqual([])
})
