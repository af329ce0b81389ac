// @vitest-environment page
import { act } from 'preact/test-utils'
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest'
import { withSources } from '../../src/catalog/sourced'
import { Panel } from '../../src/panel/panel'
import { EMPTY_PLAN } from '../../src/plan/plan'
import type { Remedy } from '../../src/report/report'
import type { Selection } from '../../src/state/selection'
import { createStore } from '../../src/state/store'
import { page } from './page'
import { FORD, HUT, LINE, NET, SMALL_PLAN } from './small-plan'

function show(selection: Selection = null, plan = SMALL_PLAN) {
  const store = createStore(plan)
  store.selection.value = selection
  return { store, ...page(<Panel store={store} />) }
}
const line = (store: ReturnType<typeof createStore>) => store.plan.value.lines.get(LINE)!

// What comes late on first use has come; what a card loads late must have come before the page goes away.
beforeAll(async () => {
  show()
  show({ kind: 'circuit', id: NET })
  show({ kind: 'line', id: LINE, legs: [] })
  show({ kind: 'station', id: FORD })
  show(null, EMPTY_PLAN)
  await vi.dynamicImportSettled()
})
afterAll(() => vi.dynamicImportSettled())

describe('the whole plan', () => {
  test('says of a circuit that lacks something that it is not finished, never that it fails', () => {
    const [net] = SMALL_PLAN.circuits.values()
    const circuits = new Map([[NET, { ...net!, sets: new Map() }]])
    const { text } = show(null, { ...SMALL_PLAN, circuits })
    expect(text()).toContain('The circuit is not finished.')
    expect(text()).not.toMatch(/fails/)
  })

  test('asks its questions and lists its circuits with their verdicts in words', async () => {
    const { headings, root } = show()
    await expect
      .poll(headings)
      .toEqual([
        'Two huts',
        'Where is it?',
        'What lies, and what is left?',
        'What do we carry?',
        'How long will it take?',
        'What could hurt someone?',
        'Do we know the ground?',
        'What weather do we plan for?',
        'What do we allow for?',
        'What do we work with?',
        'What else should be known?',
      ])
    expect(root.querySelector('.circuits')?.textContent).toMatch(/Camp net(works|thin|fails)today/)
  })

  test('shows how to begin where nothing is drawn', () => {
    expect(show(null, EMPTY_PLAN).text()).toContain('Take the tool Line')
  })

  test('takes another weather and temperature into the plan', () => {
    const { store, press, give } = show()
    press('wet')
    give('Temperature of the wire', '-12,5')
    expect(store.plan.value).toMatchObject({ weather: 'wet', wireTempC: -12.5 })
  })

  test('refuses a value that cannot be, at the field and with a sentence, and keeps the plan', () => {
    const { store, give, refusals, control } = show()
    give('Temperature of the wire', '400')
    expect(refusals()).toEqual(['Temperature of the wire must lie between -60 °C and 90 °C.'])
    const field = control('Temperature of the wire')
    expect(field.getAttribute('aria-invalid')).toBe('true')
    expect(document.getElementById(field.getAttribute('aria-describedby')!)?.textContent).toBe(refusals()[0])
    expect(store.plan.value).toBe(SMALL_PLAN)
    give('Temperature of the wire', 'warm')
    expect(refusals()[0]).toMatch(/must be a number/)
    give('Temperature of the wire', '30')
    expect(refusals()).toEqual([])
    expect(store.plan.value.wireTempC).toBe(30)
  })

  test('keeps what is being typed while the figures around it change', () => {
    const { store, control, give } = show()
    const field = control('Temperature of the wire')
    act(() => {
      field.value = '-1'
      field.dispatchEvent(new Event('input', { bubbles: true }))
    })
    act(() => store.edit((plan) => ({ ...plan, weather: 'wet' })))
    expect(field.value).toBe('-1')
    give('Temperature of the wire', '-15.0')
    expect(field.value).toBe('-15')
    act(() => store.undo())
    expect(field.value).toBe('20')
  })

  test('shows and takes lengths in feet where the person reads US units', () => {
    const { store, give, control, openAll } = show()
    openAll()
    act(() => {
      store.units.value = 'us'
    })
    expect(control('Tail at each end of a line').value).toBe('26.2')
    give('Tail at each end of a line', '10')
    expect(store.plan.value.allowances.tailM).toBeCloseTo(3.048, 12)
    expect(store.plan.value.wireTempC).toBe(20)
    expect(control('Temperature of the wire').value).toBe('68')
  })

  test('gives the spools at hand to the plan', () => {
    const { store, give, press, openAll } = show()
    openAll()
    give('Wire on each', '800')
    give('How many', '3')
    press('Add')
    expect(store.plan.value.stock).toMatchObject([{ wire: 'wd-1a', lengthM: 800, count: 3 }])
  })

  test('leads from a caution to what it is about', () => {
    const earth = { ...SMALL_PLAN.lines.get(LINE)!, return: 'earth', electrodeOhms: [100, 100] } as const
    const { store, press } = show(null, { ...SMALL_PLAN, lines: new Map([[LINE, earth]]) })
    press('Show it: Hut – Ford')
    expect(store.selection.value).toEqual({ kind: 'line', id: LINE, legs: [] })
  })

  test('opens a circuit’s card and comes back', () => {
    const { store, all, press, headings } = show()
    act(() => all('.circuits button')[0]!.click())
    expect(store.selection.value).toEqual({ kind: 'circuit', id: NET })
    expect(headings()[0]).toBe('Camp net')
    press('← The whole plan')
    expect(headings()[0]).toBe('Two huts')
  })
})

describe('the keyboard’s place', () => {
  test('goes on at the title of the card that a button led to', () => {
    const { all } = show()
    const row = all('.circuits button')[0]!
    row.focus()
    act(() => row.click())
    expect(document.activeElement?.textContent).toBe('Camp net')
  })

  test('stays where it is when the map selects something', () => {
    const { store } = show()
    act(() => {
      store.selection.value = { kind: 'circuit', id: NET }
    })
    expect(document.activeElement).toBe(document.body)
  })
})

describe('a field', () => {
  test('takes a decimal comma, and refuses a comma that may part thousands', () => {
    const { store, give, refusals } = show()
    give('Temperature of the wire', '7,25')
    expect(store.plan.value.wireTempC).toBe(7.25)
    give('Temperature of the wire', '1,200')
    expect(store.plan.value.wireTempC).toBe(7.25)
    expect(refusals()).toEqual(['1,200 can be read in two ways: write 1200 or 1.200.'])
  })

  test('puts back what the plan holds when Escape is pressed', () => {
    const { control, store } = show({ kind: 'circuit', id: NET })
    const name = control('Name')
    act(() => {
      name.value = 'Typed by mistake'
      name.dispatchEvent(new Event('input', { bubbles: true }))
    })
    act(() => {
      name.dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape', bubbles: true }))
      name.dispatchEvent(new Event('change', { bubbles: true }))
    })
    expect(name.value).toBe('Camp net')
    expect(store.canUndo.value).toBe(false)
  })
})

describe('a circuit’s card', () => {
  const circuit: Selection = { kind: 'circuit', id: NET }

  test('answers its questions in sentences, and asks for current only where there is a supply', () => {
    const { headings, text, give, store } = show(circuit)
    expect(headings().slice(0, 4)).toEqual([
      'Camp net',
      'Will it ring?',
      'Will it talk?',
      'How far could it go?',
    ])
    expect(text()).toMatch(/The faintest bell, at (Hut|Ford), gets [\d.]+ V and needs [\d.]+ V/)
    give('Supply', 'feed-48')
    expect(store.plan.value.circuits.get(NET)?.supply).toMatchObject({ type: 'feed-48', at: HUT })
    expect(headings()).toContain('Is there enough current?')
  })

  test('draws each margin with its verdict in words for those who see no colour', () => {
    const { all } = show(circuit)
    const rows = all('.margins li')
    expect(rows.length).toBeGreaterThan(2)
    for (const row of rows) expect(row.querySelector('.verdict')?.textContent).toMatch(/^(works|thin|fails)$/)
  })

  test('shows the figures of the worst weather when asked', () => {
    const { all, store } = show(circuit)
    const volts = () => all('.margins li')[0]!.textContent
    const today = volts()
    const [now, worst] = all('fieldset[aria-label="Figures of"] button')
    act(() => worst!.click())
    expect(worst!.getAttribute('aria-pressed')).toBe('true')
    expect(volts()).not.toBe(today)
    expect(store.canUndo.value).toBe(false)
    act(() => now!.click())
    expect(volts()).toBe(today)
  })

  test('puts another set at a station, moves the supply and takes it away', () => {
    const { store, give } = show(circuit)
    give('Ford', 'sound-powered')
    give('Supply', 'feed-24')
    give('It stands at', FORD)
    const net = () => store.plan.value.circuits.get(NET)!
    expect(net().sets.get(FORD)).toBe('sound-powered')
    expect(net().supply).toMatchObject({ type: 'feed-24', at: FORD })
    give('Supply', '')
    give('Ford', '')
    expect(net().supply).toBeNull()
    expect(net().sets.has(FORD)).toBe(false)
  })

  test('names what is missing', () => {
    const { text, give } = show(circuit)
    give('Ford', '')
    expect(text()).toContain('A circuit needs a set at two stations')
  })

  test('asks first for what is missing, and leaves its fields where they are while they are filled', () => {
    const bare = { ...SMALL_PLAN.circuits.get(NET)!, sets: new Map() }
    const { store, give, headings } = show(circuit, { ...SMALL_PLAN, circuits: new Map([[NET, bare]]) })
    expect(headings()[1]).toBe('What is it made of?')
    give('All stations', 'crank-1600')
    expect([...store.plan.value.circuits.get(NET)!.sets.values()]).toEqual(['crank-1600', 'crank-1600'])
    expect(headings()[1]).toBe('What is it made of?')
    store.undo()
    expect(store.plan.value.circuits.get(NET)!.sets.size).toBe(0)
  })

  test('applies a remedy that was found, with one click and one step back', () => {
    const { store, press, headings } = show(circuit)
    const remedy: Remedy = {
      changes: [{ kind: 'sets', from: 'crank-1000', to: 'crank-1600' }],
      verdict: 'works',
      worst: 'thin',
      marginPct: 40,
      worstMarginPct: 3,
      extraM: 0,
      extraKg: 0,
      extraSpools: 0,
    }
    act(() => {
      store.remedies.value = new Map([[NET, [remedy]]])
    })
    expect(headings()).toContain('What would mend it?')
    press('Apply: Crank set, 1600 Ω ringer in place of Crank set, 1000 Ω ringer')
    expect([...store.plan.value.circuits.get(NET)!.sets.values()]).toEqual(['crank-1600', 'crank-1600'])
    act(() => store.undo())
    expect(store.plan.value).toBe(SMALL_PLAN)
  })
})

describe('a line’s card', () => {
  const selected: Selection = { kind: 'line', id: LINE, legs: [] }

  test('changes wire, return and electrodes', () => {
    const { store, give } = show(selected)
    give('Wire', 'wd-36')
    give('Return', 'earth')
    give('Electrode at Ford', '60')
    expect(line(store)).toMatchObject({ wire: 'wd-36', return: 'earth', electrodeOhms: [100, 60] })
  })

  test('refuses fewer than one pair, and half a pair', () => {
    const { store, give, refusals } = show(selected)
    give('Pairs', '0')
    expect(refusals()).toHaveLength(1)
    give('Pairs', '1.5')
    expect(refusals()).toEqual(['Pairs must be a whole number.'])
    expect(line(store).pairs).toBe(1)
  })

  test('sets a leg’s lay, slack and note, and gives the slack back to the allowances', () => {
    const { store, give, control } = show(selected)
    expect(control('Slack').placeholder).toBe('20')
    give('Lay of leg 1', 'buried')
    give('Slack', '7')
    give('Note', 'by the cairn')
    expect(line(store).legs[0]).toEqual({ lay: 'buried', slackPct: 7, note: 'by the cairn' })
    give('Slack', '')
    expect(line(store).legs[0]).toEqual({ lay: 'buried', note: 'by the cairn' })
  })

  test('lays the picked legs together', () => {
    const { store, press, give } = show(selected)
    press('Leg 2')
    expect(store.selection.value).toEqual({ kind: 'line', id: LINE, legs: [1] })
    give('How 1 picked leg is laid', 'water')
    expect(line(store).legs.map((leg) => leg.lay)).toEqual(['surface', 'water'])
  })

  test('starts another circuit on a spare pair, and the circuit can be ended again', () => {
    const { store, give, press, text } = show(selected)
    give('Pairs', '2')
    expect(text()).toContain('1 pair of 2 is spare.')
    press('Start a circuit on a spare pair')
    expect(store.plan.value.circuits.size).toBe(2)
    expect(store.selection.value?.kind).toBe('circuit')
    press('Take the circuit off; leave its wire')
    expect([store.plan.value.circuits.size, store.plan.value.lines.size]).toEqual([1, 1])
  })

  test('deletes the line and goes back to the whole plan', () => {
    const { store, press, headings } = show(selected)
    press('Delete the line')
    expect(store.plan.value.lines.size).toBe(0)
    expect(headings()[0]).toBe('Two huts')
  })
})

describe('a station’s card', () => {
  const selected: Selection = { kind: 'station', id: FORD }

  test('renames the station and moves it', () => {
    const { store, give } = show(selected)
    give('Name', 'Old ford')
    give('Place', '47.02 11')
    expect(store.plan.value.stations.get(FORD)).toMatchObject({ name: 'Old ford', position: [11, 47.02] })
  })

  test('shows its place in the form that the person likes', () => {
    const { store, control } = show(selected)
    expect(control('Place').value).toMatch(/° N .*° E$/)
    act(() => {
      store.placeForm.value = 'utm'
    })
    expect(control('Place').value).toMatch(/^32T \d{6} \d{7}$/)
  })

  test('refuses a latitude off the globe, with a sentence', () => {
    const { store, give, refusals } = show(selected)
    give('Place', '95 11')
    expect(refusals()).toEqual([expect.stringContaining('off the globe')])
    expect(store.plan.value).toBe(SMALL_PLAN)
  })

  test('says what goes with it when it is deleted', () => {
    const { store, press } = show(selected)
    press('Delete the station and its 1 line')
    expect([store.plan.value.stations.size, store.plan.value.lines.size]).toEqual([1, 0])
  })
})

describe('the plan’s own catalog', () => {
  test('starts from a copy, takes new figures, drops the source that no longer holds, and refuses what cannot be', async () => {
    const { store, all, give, refusals, openAll } = show()
    const known = () => {
      openAll()
      return all('button').filter((each) => each.textContent === 'Copy it to change it')
    }
    await expect.poll(known).toHaveLength(3)
    act(() => known()[0]!.click())
    openAll()
    const wire = () => store.plan.value.catalog.wires[0]!
    const original = withSources(store.catalog.value.wires.get(wire().id.replace(/-2$/, ''))!)
    expect(wire()).toMatchObject({ loopOhmPerKm: original.loopOhmPerKm, name: `${original.name} (copy)` })

    give('Mass', '20')
    expect(wire().kgPerKm).toBe(20)
    expect(wire().sources?.kgPerKm).toBe('Changed by hand.')
    expect(wire().sources?.nanoFPerKm).toEqual(original.sources?.nanoFPerKm)
    expect([wire().spread?.kgPerKm, wire().spread?.nanoFPerKm]).toEqual([
      undefined,
      original.spread?.nanoFPerKm,
    ])

    give('Mass', '-1')
    expect(refusals()).toHaveLength(1)
    give('Spools, m', '400; many')
    expect(refusals()).toHaveLength(2)
    give('Spools, m', '400; 800')
    expect(wire()).toMatchObject({ kgPerKm: 20, spoolsM: [400, 800] })
  })
})
