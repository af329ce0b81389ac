import { expect, test } from 'vitest'
import { RANK } from '../../src/budget/verdict'
import { CELLS } from '../../src/catalog/cells'
import { formatPlan } from '../../src/files/format-plan'
import { parsePlan } from '../../src/files/parse-plan'
import { shelfOf } from '../../src/files/parse-shelf'
import { reportPlan } from '../../src/report/report-plan'
import { barePlan } from '../../src/shelf/net-plan'
import { type PlannedNet, shelfAnswer } from '../../src/shelf/shelf-answer'
import { wantSentence, whySentence } from '../../src/words/shelf-words'
import { tongueOf } from '../../src/words/tongue'
import { ALL, cases } from '../cases'
import { randomShelf, type ShelfValue } from './random-shelf'

const sum = (numbers: readonly number[]) => numbers.reduce((a, b) => a + b, 0)

/** Judges a net's plan as a stranger would: from its file alone. */
function judgedAnew({ plan }: PlannedNet) {
  const read = parsePlan(formatPlan(plan))
  if (!read.ok) throw new Error(JSON.stringify(read.problems))
  const report = reportPlan(read.value)
  const least = (of: readonly ('works' | 'thin' | 'fails')[]) =>
    of.reduce((a, b) => (RANK[b] < RANK[a] ? b : a))
  return {
    plan: read.value,
    report,
    verdict: least(report.circuits.map(({ verdict }) => verdict)),
    worst: least(report.circuits.map(({ worst }) => worst.verdict)),
  }
}

/** Everything that PLAN-FORMAT asks of a net, from its plan's own report. */
function expectHolds(net: PlannedNet, value: ShelfValue, which: string) {
  const { plan, report, verdict, worst } = judgedAnew(net)
  expect({ verdict, worst }, which).toEqual({ verdict: net.judged.verdict, worst: net.judged.worst })
  const { have } = value

  for (const wire of new Set([...plan.lines.values()].map((line) => line.wire))) {
    const laidM = sum(
      report.lines.filter(({ id }) => plan.lines.get(id)!.wire === wire).map(({ wireM }) => wireM),
    )
    const thereM = sum(
      have.wires.filter((each) => each.wire === wire).map(({ lengthM, count }) => lengthM * count),
    )
    expect(laidM, `${which}: ${wire}`).toBeLessThanOrEqual(thereM)
  }
  expect(sum(report.lines.map(({ wireM }) => wireM)), which).toBeCloseTo(net.wireM, 6)
  expect(sum(report.spools.map(({ splices }) => splices)), which).toBe(net.splices)
  expect(sum(report.spools.map(({ leftM }) => leftM)), which).toBeCloseTo(net.leftM, 6)
  expect(
    report.cautions.filter(({ code }) => code === 'stock-short'),
    which,
  ).toEqual([])
  for (const line of report.lines)
    expect(sum(line.pieces.map(({ wireM }) => wireM)), `${which}: ${line.id} is cut whole`).toBeCloseTo(
      line.wireM,
      4,
    )

  const circuits = [...plan.circuits.values()]
  const used = (type: string) =>
    sum(circuits.map(({ sets }) => [...sets.values()].filter((set) => set === type).length))
  for (const set of new Set(circuits.flatMap(({ sets }) => [...sets.values()])))
    expect(used(set), `${which}: ${set}`).toBeLessThanOrEqual(
      sum(have.sets.filter((each) => each.set === set).map(({ count }) => count)),
    )
  for (const type of new Set(circuits.flatMap(({ supply }) => (supply ? [supply.type] : [])))) {
    const count = circuits.filter(({ supply }) => supply?.type === type).length
    const listed = have.supplies.filter(({ supply }) => supply === type)
    if (listed.length > 0)
      expect(count, `${which}: ${type}`).toBeLessThanOrEqual(sum(listed.map((each) => each.count)))
  }
  for (const cell of CELLS) {
    const own = plan.catalog.supplies.filter((supply) => supply.cell === cell.id)
    const cells = sum(
      own.map(
        ({ id, volts }) =>
          circuits.filter(({ supply }) => supply?.type === id).length * Math.round(volts / cell.volts),
      ),
    )
    expect(cells, `${which}: ${cell.id}`).toBeLessThanOrEqual(
      sum(have.cells.filter((each) => each.cell === cell.id).map(({ count }) => count)),
    )
  }

  for (const { id } of value.places)
    expect(
      circuits.some(({ sets }) => sets.has(id as never)),
      `${which}: a telephone at ${id}`,
    ).toBe(true)
  if (value.distancesM)
    for (const line of report.lines) {
      const [a, b] = [plan.lines.get(line.id)!.from, plan.lines.get(line.id)!.to].map((id) =>
        value.places.findIndex((place) => place.id === id),
      ) as [number, number]
      // Positions are held to a centimetre: both ends and a bend.
      if (a >= 0 && b >= 0) expect(Math.abs(line.mapM - value.distancesM[a]![b]!), which).toBeLessThan(0.03)
    }
  if (verdict === 'fails') return
  const ids = value.places.map((place) => place.id)
  const talk =
    value.talk === 'all' ? ids.flatMap((a, i) => ids.slice(i + 1).map((b) => [a, b] as const)) : value.talk
  for (const [a, b] of talk) {
    const shared = report.circuits.filter(({ voice }) =>
      [
        [a, b],
        [b, a],
      ].every(([from, to]) => voice.some((row) => row.from === from && row.to === to)),
    )
    expect(shared.length, `${which}: ${a} and ${b} speak`).toBeGreaterThan(0)
    expect(shared[0]!.missing, which).toEqual([])
    const { supply } = plan.circuits.get(shared[0]!.id as never)!
    const needsCurrent = [a, b].some((id) =>
      report.circuits.some(({ loop }) => loop.some(({ station }) => station === id)),
    )
    if (supply && needsCurrent)
      expect(
        shared[0]!.loop.some(({ call }) => call.includes(a) && call.includes(b)) ||
          shared[0]!.loop.length === 0,
        `${which}: current`,
      ).toBe(true)
  }
}

test.each([
  { places: 2, things: 9, cases: cases(2) },
  { places: 3, things: 10, cases: cases(1) },
  { places: 9, things: 34, cases: cases(1) },
  ...(ALL ? [{ places: 4, things: 9, cases: cases(6) }] : []),
])(
  'every net of $cases shelves of $places places holds in the report of its own plan',
  { timeout: 300_000 },
  ({ places, things, cases: shelves }) => {
    const tally = { good: 0, misses: 0, none: 0, nets: 0 }
    for (let seed = 1; seed <= shelves; seed++) {
      const value = randomShelf(100 * places + seed, {
        places,
        things,
        spreadM: [300, 1500, 8000][seed % 3]!,
      })
      const shelf = shelfOf(value)
      if (!shelf.ok) throw new Error(JSON.stringify(shelf.problems))
      const answer = shelfAnswer(shelf.value)
      const { nets, wants, country } = answer
      for (const [k, net] of nets.entries()) expectHolds(net, value, `shelf ${places}/${seed}, net ${k}`)
      tally.nets += nets.length
      const works = nets.some(({ judged }) => judged.verdict !== 'fails' && judged.speaks)
      if (works) tally.good++
      else if (nets.length > 0) tally.misses++
      else tally.none++
      expect(wants.length > 0, `shelf ${places}/${seed} tells what it lacks where it does`).toBe(!works)
      const say = tongueOf(barePlan(country), 'metric')
      for (const sentence of [
        ...wants.map((want) => wantSentence(want, country.shelf, say)),
        ...nets.map((net) => whySentence(net, country, say)),
      ])
        expect(sentence).toMatch(/^.+[.]$/)
      for (const [k, net] of nets.entries())
        if (k > 0)
          expect(
            RANK[nets[k - 1]!.judged.verdict] * 3 + RANK[nets[k - 1]!.judged.worst],
          ).toBeGreaterThanOrEqual(RANK[net.judged.verdict] * 3 + RANK[net.judged.worst])
    }
    console.info(`shelves of ${places} places:`, tally)
    expect(tally.nets).toBeGreaterThan(0)
  },
)
