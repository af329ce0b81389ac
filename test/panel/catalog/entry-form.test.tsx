// @vitest-environment page
import { expect, test } from 'vitest'
import { BUILT_IN } from '../../../src/catalog/built-in'
import { FORMS, type Form } from '../../../src/panel/catalog/entry-figures'
import { EntryForm } from '../../../src/panel/catalog/entry-form'
import { putSet, putSupply } from '../../../src/plan/catalog-edits'
import { EMPTY_PLAN } from '../../../src/plan/plan'
import { createStore } from '../../../src/state/store'
import { mended } from '../../plan/drawn-net'
import { page } from '../page'

test.each<readonly [string, Form, readonly string[]]>([
  ['a wire', FORMS.wire, ['wornMicroSPerKm']],
  [
    'a set',
    FORMS.set,
    [
      'offHook.dropVolts',
      'battery.volts',
      'battery.ampHours',
      'battery.talkMA',
      'battery.idleMA',
      'battery.cell',
      'kg',
    ],
  ],
  [
    'a supply',
    FORMS.supply,
    [
      ...['offHookMA', 'powerW.idle', 'powerW.talk', 'powerW.ring', 'kg', 'cell'],
      ...['fedBy.volts', 'fedBy.ampHours', 'fedBy.efficiencyPct', 'fedBy.cell'],
    ],
  ],
])(
  '%s is asked for every member of section 3 of the plan format',
  (_, { figures, cells, parts }, members) => {
    const asked = [...figures, ...parts.flatMap((part) => part.figures)].map(({ at }) => at)
    const all = new Set([...asked, ...cells, ...parts.flatMap((part) => part.cells)])
    expect(members.filter((at) => !all.has(at))).toEqual([])
  },
)

test('the cell of a set’s battery is chosen, and the spread of a figure typed', () => {
  const set = { ...BUILT_IN.sets.find(({ id }) => id === 'crank-1600')!, id: 'ours' }
  const store = createStore(mended(putSet(EMPTY_PLAN, set)))
  const ours = () => store.plan.value.catalog.sets[0]!
  const show = () => {
    const form = page(
      <EntryForm
        store={store}
        entry={ours()}
        {...FORMS.set}
        onPut={(entry) => store.tryEdit((plan) => putSet(plan, entry))}
      />,
    )
    form.openAll()
    return form
  }
  show().give('The battery is made of', 'lr14')
  expect(ours().battery!.cell).toBe('lr14')
  show().give('The battery is made of', '')
  expect(ours().battery).not.toHaveProperty('cell')
  const { label } = FORMS.set.parts
    .flatMap((part) => part.figures)
    .find(({ at }) => at === 'ringer.minVolts')!
  show().give(`± ${label}`, '7')
  expect(ours().spread!['ringer.minVolts']).toBe(7)
  expect(ours().ringer).toEqual(set.ringer)
})

test('what feeds a unit may be made of cells that are not known here', () => {
  const unit = BUILT_IN.supplies.find(({ fedBy }) => fedBy)!
  const odd = { ...unit, id: 'ours', fedBy: { ...unit.fedBy!, cell: 'edison' } }
  const store = createStore(mended(putSupply(EMPTY_PLAN, odd)))
  const form = page(
    <EntryForm
      store={store}
      entry={store.plan.value.catalog.supplies[0]!}
      {...FORMS.supply}
      onPut={(entry) => store.tryEdit((plan) => putSupply(plan, entry))}
    />,
  )
  const chosen = form.all<HTMLSelectElement>('select').map((each) => each.value)
  expect(chosen).toContain('edison')
})
