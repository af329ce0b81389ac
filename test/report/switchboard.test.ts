import { describe, expect, test } from 'vitest'
import { parsePlan } from '../../src/files/parse-plan'
import { measurePlan } from '../../src/measure/measure-line'
import { besideReport } from '../../src/report/beside-report'
import { reportPlan } from '../../src/report/report-plan'
import {
  callsPerDaySentence,
  faintSentence,
  trafficSentence,
  trunkSentence,
} from '../../src/words/switchboard-words'
import { tongueOf } from '../../src/words/tongue'

/** Wire of pure resistance: whatever is asked of it can be reckoned with Ohm's law. */
const wire = {
  id: 'w',
  loopOhmPerKm: 100,
  tempCoeffPerC: 0,
  nanoFPerKm: 0,
  loopMilliHPerKm: 0,
  dryMicroSPerKm: 0,
  wetMicroSPerKm: 0,
  kgPerKm: 10,
}
const set = {
  id: 't',
  talk: 'local',
  offHook: { dcOhms: 100, acOhms: 600, minMA: 0 },
  ringer: { ohms: 1e6, minVolts: 10 },
  generator: { volts: 80, hz: 20, ohms: 500 },
  maxLossDb: 12,
}
const board = {
  id: 'b',
  kind: 'board',
  ports: 4,
  drop: { ohms: 1000, minVolts: 20 },
  generator: { volts: 90, hz: 20, ohms: 500 },
  insertionDb: 1,
}
const exchange = {
  id: 'x',
  kind: 'exchange',
  ports: 4,
  volts: 48,
  ohms: 400,
  ring: { volts: 80, hz: 20, ohms: 500 },
}

type Member = Readonly<Record<string, unknown>>

/** Stars of wire: the board of each circuit, and how many ohms away each telephone is. */
function reported(
  stars: readonly {
    id: string
    supply: Member
    ends: Readonly<Record<string, number>>
    more?: readonly string[]
  }[],
) {
  const features: Member[] = []
  const place = (id: string, lon: number, lat: number) =>
    features.push({
      type: 'Feature',
      id,
      geometry: { type: 'Point', coordinates: [lon, lat] },
      properties: { kind: 'station', name: id.toUpperCase() },
    })
  // A degree of latitude at 45° is 111.1 km; no slack and no tails, so that ohms are told by the map.
  const circuits = stars.map(({ id, supply, ends, more = [] }, k) => {
    const lat = 45 + k
    place(id, 10, lat)
    const lines = Object.entries(ends).map(([end, ohms]) => {
      const known = stars.findIndex((star) => star.id === end)
      const far = [10, known === -1 ? lat + ohms / 100 / 111.13 : 45 + known]
      if (known === -1) place(end, far[0]!, far[1]!)
      features.push({
        type: 'Feature',
        id: `${id}-${end}`,
        geometry: { type: 'LineString', coordinates: [[10, lat], far] },
        properties: { kind: 'line', from: id, to: end, wire: 'w', legs: [{ lay: 'surface' }] },
      })
      return `${id}-${end}`
    })
    const sets = Object.fromEntries(
      [...Object.keys(ends).filter((end) => !stars.some((star) => star.id === end)), ...more].map((at) => [
        at,
        't',
      ]),
    )
    return { id: `c-${id}`, lines, sets, supply: { type: supply.id, at: id } }
  })
  const file = {
    type: 'FeatureCollection',
    plan: {
      format: 'fieldpair-plan',
      version: 1,
      allowances: { slackPct: { surface: 0 }, tailM: 0 },
      catalog: { wires: [wire], sets: [set], supplies: [...new Set(stars.map(({ supply }) => supply))] },
      circuits,
    },
    features: [
      ...features.filter((each) => !('from' in (each.properties as object))),
      ...features.filter((each) => 'from' in (each.properties as object)),
    ],
  }
  const read = parsePlan(JSON.stringify(file))
  if (!read.ok) throw new Error(JSON.stringify(read.problems))
  const plan = read.value
  const report = reportPlan(plan)
  const measured = measurePlan(plan)
  const beside = report.circuits.map((circuit) => besideReport(plan, circuit, measured, null)!)
  return { plan, report, beside, say: tongueOf(plan, 'metric') }
}

describe('a board with three lines and an operator', () => {
  const { report, beside, say } = reported([
    { id: 'hub', supply: board, ends: { a: 500, b: 1500, c: 3000 }, more: ['hub'] },
  ])
  const { switchboard, missing, verdict } = report.circuits[0]!
  test('numbers its jacks as its lines are named, and the operator has none', () => {
    expect(missing).toEqual([])
    expect(switchboard).toMatchObject({
      kind: 'board',
      station: 'hub',
      hasOperator: true,
      spare: 1,
      callsAtOnce: 1,
    })
    expect(switchboard!.jacks.map(({ number, lines, stations }) => [number, lines, stations])).toEqual([
      [1, ['hub-a'], ['a']],
      [2, ['hub-b'], ['b']],
      [3, ['hub-c'], ['c']],
    ])
  })
  test('has each drop and each bell by Ohm’s law', () => {
    // 80 V behind 500 Ω, the line, and a drop of 1000 Ω; 90 V behind 500 Ω into a bell of a megohm.
    const drops = switchboard!.jacks.map(({ drop }) => drop!.volts)
    for (const [k, ohms] of [500, 1500, 3000].entries())
      expect(drops[k]).toBeCloseTo((80 * 1000) / (500 + ohms + 1000), 1)
    for (const { bell } of switchboard!.jacks) expect(bell!.volts).toBeCloseTo(90, 0)
    expect(switchboard!.jacks[2]!.drop!.minVolts).toBe(20)
    expect(verdict).toBe('fails')
  })
  test('lists the through calls that are faint, the worst first, each once', () => {
    // 600 Ω to 600 Ω over R: 20 log ((1200 + R) / 1200), and 1 dB of the cord; 12 dB is the most, thin from 9 on.
    const loss = (ohms: number) => 20 * Math.log10((1200 + ohms) / 1200) + 1
    const byOhms = { bc: 4500, ac: 3500, chub: 3000, ab: 2000, bhub: 1500, ahub: 500 }
    const thin = Object.entries(byOhms).filter(([, ohms]) => loss(ohms) > 9)
    expect(switchboard!.faint.map(({ from, to }) => `${from}${to}`)).toEqual(thin.map(([pair]) => pair))
    expect(switchboard!.faint[0]!.lossDb).toBeCloseTo(loss(4500), 2)
    expect(faintSentence(switchboard!, say)).toContain('B with C')
    expect(trafficSentence(switchboard!, say)).toContain('1 call at once')
    expect(beside[0]!.outlook.callsPerDay).toEqual([])
    expect(beside[0]!.outlook.calling).toEqual({ how: 'board', station: 'hub', without: [] })
  })
})

test('a fifth line on four ports is missing a port, and a board that has them is named', () => {
  const { report } = reported([{ id: 'hub', supply: board, ends: { a: 1, b: 2, c: 3, d: 4, e: 5 } }])
  expect(report.circuits[0]!.missing).toEqual([
    expect.objectContaining({ code: 'too-few-ports', lines: 5, ports: 4, supply: 'b' }),
  ])
  expect(report.circuits[0]!.verdict).toBe('fails')
})

test('an exchange counts its own telephone, and lasts as its watts have it', () => {
  const own = {
    ...exchange,
    powerW: { idle: 6, talk: 12, ring: 18 },
    fedBy: { volts: 12, ampHours: 20, efficiencyPct: 50 },
  }
  const { report, beside } = reported([
    { id: 'hub', supply: own, ends: { a: 100, b: 100, c: 100 }, more: ['hub'] },
  ])
  expect(report.circuits[0]!.switchboard).toMatchObject({
    kind: 'exchange',
    hasOperator: false,
    spare: 0,
    callsAtOnce: 2,
  })
  expect(report.circuits[0]!.switchboard!.jacks.map(({ stations }) => stations)).toEqual([
    ['a'],
    ['b'],
    ['c'],
    ['hub'],
  ])
  // 240 Wh, half of which get through; 100 calls of 3 min and 10 s of ringing: 5 h at 12 W, 0.278 h at 18 W, the rest at 6 W.
  const { callsPerDay } = beside[0]!.outlook
  expect(callsPerDay.find(({ calls }) => calls === 100)!.days).toBeCloseTo(
    120 / (5 * 12 + 0.2778 * 18 + 18.722 * 6),
    3,
  )
  expect(callsPerDaySentence(callsPerDay)).toContain('at 100')
  const unknown = reported([{ id: 'hub', supply: exchange, ends: { a: 100, b: 100 } }])
  expect(unknown.beside[0]!.outlook.callsPerDay).toEqual([])
  expect(unknown.beside[0]!.outlook.endurance[0]!.until).toEqual({ code: 'unknown', lacks: 'power' })
})

describe('two boards with a line between', () => {
  const { report, beside, say } = reported([
    { id: 'near', supply: board, ends: { a: 300, b: 900, far: 0 } },
    { id: 'far', supply: board, ends: { c: 600, d: 1200 } },
  ])
  const trunkOhms = report.lines.find(({ id }) => id === 'near-far')!.loopOhms
  test('have a jack each for it', () => {
    expect(
      report.circuits.map(({ switchboard }) => switchboard!.jacks.map(({ trunkTo }) => trunkTo)),
    ).toEqual([
      [null, null, 'c-far'],
      [null, null, 'c-near'],
    ])
    expect(report.circuits.map(({ notes, missing }) => [...notes, ...missing])).toEqual([[], []])
  })
  test('ring each other’s drop and speak through two cords, by Ohm’s law', () => {
    const [trunk] = beside[0]!.trunks!
    for (const row of trunk!.ringing) expect(row.volts).toBeCloseTo((90 * 1000) / (500 + trunkOhms + 1000), 2)
    expect(trunk!.calls.map(({ from, to, byHand }) => [from, to, byHand])).toEqual(
      [
        ['b', 'd'],
        ['a', 'd'],
        ['b', 'c'],
        ['a', 'c'],
      ].map(([from, to]) => [from, to, ['near', 'far']]),
    )
    expect(trunk!.calls[0]!.lossDb).toBeCloseTo(
      20 * Math.log10((1200 + 900 + trunkOhms + 1200) / 1200) + 2,
      2,
    )
    expect(trunk!.verdict).toBe('fails')
    expect(trunkSentence(trunk!, say)).toContain('both operators')
    expect(beside[1]!.trunks).toBeUndefined()
  })
  test('need a port for it at both ends', () => {
    const full = reported([
      { id: 'near', supply: board, ends: { a: 1, b: 1, c: 1, far: 0 } },
      { id: 'far', supply: board, ends: { d: 1, e: 1, f: 1, g: 1 } },
    ])
    expect(full.report.circuits.map(({ missing }) => missing.map(({ code }) => code))).toEqual([
      [],
      ['too-few-ports'],
    ])
  })
  test('of which one is an exchange: only the operator puts calls through; two exchanges call nobody', () => {
    const mixed = reported([
      { id: 'near', supply: board, ends: { a: 1, b: 1, far: 0 } },
      { id: 'far', supply: exchange, ends: { c: 1, d: 1 } },
    ])
    expect(mixed.beside[0]!.trunks![0]!.calls[0]!.byHand).toEqual(['near'])
    const both = reported([
      { id: 'near', supply: exchange, ends: { a: 1, b: 1, far: 0 } },
      { id: 'far', supply: { ...exchange, id: 'x2' }, ends: { c: 1, d: 1 } },
    ])
    expect(both.beside[0]!.trunks![0]).toMatchObject({ joinsExchanges: true, verdict: 'fails' })
    expect(trunkSentence(both.beside[0]!.trunks![0]!, both.say)).toContain('Nobody is called')
  })
})
