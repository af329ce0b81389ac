import { describe, expect, test } from 'vitest'
import { circuitRows } from '../../src/budget/circuit-rows'
import { circuitPlots } from '../../src/figure/circuit-plots'
import { METRES_PER_MILE } from '../../src/units'
import { builtInSet, builtInSupply, builtInWire } from '../reference/built-in-entry'
import { DRY, rowOfSets } from '../reference/test-circuit'

const crank = builtInSet('crank-1600')
const common = builtInSet('common-1-ren')
const nameOf = (station: string) => station.toUpperCase()
const wire = builtInWire('wd-1a')

describe('the plots of a local-battery circuit', () => {
  const model = rowOfSets([crank, crank, crank], wire, 4000)
  const plots = circuitPlots(model, DRY, nameOf, 'metric')

  test('are loss and ring volts, and no battery’s', () => {
    expect(plots.map(({ title }) => title.split(',')[0])).toEqual(['Loss of speech', 'Ring volts'])
  })
  test('show loss dry and wet over the telephone band, with the most that is allowed', () => {
    const [loss] = plots
    expect(loss!.curves.map(({ name }) => name)).toEqual(['dry', 'wet'])
    expect(loss!.curves[0]!.points.map(({ x }) => x)).toContain(3400)
    expect(loss!.level!.y).toBe(crank.maxLossDb)
    expect(loss!.says).toMatch(/^dry: [\d.−]+ dB at 300 Hz, [\d.]+ dB at 3400 Hz\. wet: /)
  })
  test('end at the bell with the volts of its row, over all the wire', () => {
    const row = circuitRows(model, DRY).ringing.find(({ from, to }) => from === 's0' && to === 's2')!
    const ring = plots[1]!
    expect(ring.title).toMatch(/S[02] to S[02]/)
    const [today, worst] = ring.curves
    expect(today!.points.at(-1)!.x).toBeCloseTo(8, 9)
    expect(today!.points.at(-1)!.y).toBeCloseTo(row.volts, 6)
    expect(worst!.points.at(-1)!.y).toBeLessThan(row.volts)
    expect(ring.level!.y).toBe(crank.ringer!.minVolts)
    expect(ring.places.map(({ name }) => name)).toHaveLength(3)
  })
  test('reckon in miles where the person does', () => {
    const ring = circuitPlots(model, DRY, nameOf, 'us')[1]!
    expect(ring.x.label).toMatch(/^Wire from S[02], mi$/)
    expect(ring.curves[0]!.points.at(-1)!.x).toBeCloseTo(8000 / METRES_PER_MILE, 9)
  })
})

test('a fed circuit shows the battery’s volts down to the set with least current', () => {
  const model = rowOfSets([common, common], wire, 3000, builtInSupply('feed-48'))
  const dc = circuitPlots(model, DRY, nameOf, 'metric').find(({ title }) => title.startsWith('Battery'))!
  expect(dc.title).toBe('Battery volts, S0 to S1')
  const [today, worst] = dc.curves
  expect(today!.points[0]!.y).toBeLessThan(48)
  expect(today!.points.at(-1)!.y).toBeLessThan(today!.points[0]!.y)
  expect(worst!.points.at(-1)!.y).toBeLessThan(today!.points.at(-1)!.y)
  expect(dc.level!.y).toBeCloseTo((common.offHook.minMA / 1000) * common.offHook.dcOhms, 9)
})

test('a circuit with one set has no plot', () => {
  expect(circuitPlots(rowOfSets([crank], wire, 0), DRY, nameOf, 'metric')).toEqual([])
})
