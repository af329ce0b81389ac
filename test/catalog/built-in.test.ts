import { describe, expect, test } from 'vitest'
import { figuresOf } from '../../src/catalog/source-tally'
import { SOURCED } from '../../src/catalog/sourced'
import { SOURCE_KINDS, sourceAt } from '../../src/catalog/sources'
import { SPOOLS, spoolOf } from '../../src/catalog/spools'

const { wires, sets, supplies } = SOURCED
const entries = [...wires, ...sets, ...supplies]

describe('the built-in catalog', () => {
  test('has wires, sets and supplies enough to choose from', () => {
    expect(wires.length).toBeGreaterThanOrEqual(14)
    expect(sets.length).toBeGreaterThanOrEqual(10)
    expect(supplies.length).toBeGreaterThanOrEqual(10)
  })

  test.each([
    { kind: 'wires', list: wires },
    { kind: 'sets', list: sets },
    { kind: 'supplies', list: supplies },
  ])('has $kind of every kind, each with an id of its own', ({ list }) => {
    expect(new Set(list.map(({ id }) => id)).size).toBe(list.length)
    for (const { id, name, source } of list) {
      expect(id).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/)
      expect(name.length * source.length, id).toBeGreaterThan(0)
    }
  })

  test.each(entries)('says where every figure of $id comes from, and how it is known', (entry) => {
    for (const figure of figuresOf(entry)) {
      const source = sourceAt(entry.sources, figure)
      expect(SOURCE_KINDS, figure).toContain(source?.kind)
      expect(source!.says, figure).toMatch(/^[A-Z0-9≤±].*\.$/s)
      const isRead = source!.kind === 'read' || source!.kind === 'data-sheet'
      expect(isRead && source!.says.includes('from memory'), `${figure}: ${source!.says}`).toBe(false)
    }
  })

  test.each(entries)(
    'says how far real things lie from the figures of $id, and where that comes from',
    (entry) => {
      const figures = figuresOf(entry)
      for (const [figure, pct] of Object.entries(entry.spread ?? {})) {
        expect(figures, figure).toContain(figure)
        expect(pct, figure).toBeGreaterThan(0)
        expect(sourceAt(entry.sources, `spread.${figure}`), figure).toBeDefined()
      }
    },
  )

  test('has a spread for whatever a verdict hangs on', () => {
    const wanting = (list: readonly { id: string; spread?: object }[], figures: readonly string[]) =>
      list.flatMap((entry) =>
        figuresOf(entry)
          .filter((figure) => figures.includes(figure) && !(figure in (entry.spread ?? {})))
          .map((figure) => `${entry.id}: ${figure}`),
      )
    expect(
      wanting(wires, ['loopOhmPerKm', 'nanoFPerKm', 'wetNanoFPerKm', 'wetMicroSPerKm', 'wornMicroSPerKm']),
    ).toEqual([])
    expect(
      wanting(sets, [
        ...['offHook.dcOhms', 'offHook.acOhms', 'offHook.dropVolts', 'ringer.ohms', 'ringer.minVolts'],
        ...['generator.volts', 'generator.ohms', 'maxLossDb'],
      ]),
    ).toEqual([])
    const feeding = supplies.filter(({ kind }) => kind !== 'board')
    expect(wanting(feeding, ['volts', 'ohms', 'maxMA', 'ring.volts', 'ring.ohms', 'ampHours'])).toEqual([])
    const handWorked = supplies.filter(({ kind }) => kind === 'board')
    expect(
      wanting(handWorked, ['drop.ohms', 'drop.minVolts', 'generator.volts', 'generator.ohms', 'insertionDb']),
    ).toEqual([])
  })

  test('has boards of 4 to 30 lines, of both signals and every way to join them, and exchanges of 2 to 32 ports', () => {
    const of = (kind: string) => supplies.filter((each) => each.kind === kind)
    const ports = (kind: string) => of(kind).map((each) => each.ports!)
    expect([Math.min(...ports('board')), Math.max(...ports('board'))]).toEqual([4, 30])
    expect([Math.min(...ports('exchange')), Math.max(...ports('exchange'))]).toEqual([2, 32])
    for (const { name, ports: lines, callsAtOnce, drop, generator } of of('board')) {
      expect(drop && generator, name).toBeDefined()
      expect(callsAtOnce! * 2, name).toBeLessThanOrEqual(lines!)
    }
    for (const { name, ring, powerW } of of('exchange')) {
      expect(ring?.maxLoad, name).toBeGreaterThan(0)
      expect(powerW!.talk, name).toBeGreaterThan(powerW!.idle)
    }
  })

  test('weighs every set and supply', () => {
    for (const entry of [...sets, ...supplies]) expect(entry.kg, entry.id).toBeGreaterThan(0)
  })

  test('has supplies, talking ways and ringers of every kind that a plan may ask for', () => {
    expect(new Set(supplies.map(({ kind }) => kind))).toEqual(
      new Set(['feed', 'series', 'ringdown', 'exchange', 'board']),
    )
    expect(new Set(sets.map(({ talk }) => talk))).toEqual(new Set(['local', 'common', 'sound']))
    expect(sets.some(({ ringer }) => ringer === undefined)).toBe(true)
    expect(supplies.some(({ indicator }) => indicator !== undefined)).toBe(true)
    expect(supplies.some(({ maxMA }) => maxMA !== undefined)).toBe(true)
  })

  test('leaks more when wet, and nothing in it is negative', () => {
    for (const wire of wires) {
      expect(wire.wetMicroSPerKm, wire.id).toBeGreaterThanOrEqual(wire.dryMicroSPerKm)
      for (const [key, value] of Object.entries(wire)) {
        if (typeof value === 'number') expect(value, `${wire.id}.${key}`).toBeGreaterThan(0)
      }
    }
  })
})

describe('spools', () => {
  test('hold wires that the catalog has, in lengths in which those wires come', () => {
    for (const spool of SPOOLS) {
      for (const id of spool.wires) {
        const wire = wires.find((candidate) => candidate.id === id)
        expect(wire, id).toBeDefined()
        const lengths = wire!.spoolsM.filter((lengthM) => spoolOf(id, lengthM) === spool)
        expect(lengths, `${id} on ${spool.name}`).toHaveLength(1)
      }
    }
  })

  test('of every standard length of the usual field wire have a name', () => {
    const field = wires.find(({ id }) => id === 'wd-1a')!
    expect(field.spoolsM.map((lengthM) => spoolOf('wd-1a', lengthM)?.name)).toEqual([
      'Spool DR-8',
      'Dispenser MX-306',
      'Reel RL-159/U or DR-4',
      'Reel DR-5',
    ])
  })

  test('of an unusual length have none', () => {
    expect(spoolOf('wd-1a', 555)).toBeUndefined()
  })
})
