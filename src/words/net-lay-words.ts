import { APART_M } from '../route/apart'
import type { Country } from '../shelf/country'
import { type CircuitDesign, jointsOf, runOf } from '../shelf/net-design'
import { shapeOf } from '../shelf/net-shapes'
import { ringShares } from '../shelf/ring-shares'
import type { Run } from '../shelf/runs'
import type { Tongue } from './tongue'
import { formatCount, formatList } from './units'

/** `a chain, Camp – Ford – Weir, of WD-1A`: the lines of one circuit. */
export function layWords(circuit: CircuitDesign, country: Country, say: Tongue): string {
  const { edges, sets } = circuit
  const places = [...sets.keys()]
  const joints = jointsOf(circuit)
  const name = (place: number) => {
    const { id } = country.shelf.places[place] ?? {}
    return id === undefined
      ? joints.length > 1
        ? 'a joint in the open'
        : 'the joint in the open'
      : say.name(id)
  }
  const bare = edges.map(({ edge }) => edge)
  const shape = shapeOf(bare)
  const degree = (place: number) => bare.filter((each) => each.includes(place)).length
  const row = () => orderOf(bare, places).map(name).join(' – ')
  const ringWords = () => {
    const shared = ringShares(country, circuit)
    if (shared === null) return ' that outlives one break if its ways keep apart'
    const [worst] = shared
    if (!worst) return ' that outlives one break'
    const [one, two] = worst.lines.map((line) => line.map(name).join(' – '))
    return ` of which one break can cut two lines where ${one} and ${two} lie within ${say.length(APART_M)} of each other for ${say.length(Math.max(1, worst.lengthM))}`
  }
  const lay = {
    pair: () => `a line from ${name(places[0]!)} to ${name(places[1]!)}`,
    chain: () => `a chain, ${row()},`,
    star: () =>
      `a star from ${name([...places, ...joints].find((place) => degree(place) === edges.length)!)}`,
    tree: () =>
      joints.length > 0
        ? `a tree of ${formatCount(edges.length, 'line')} with ${formatCount(joints.length, 'joint')} in the open`
        : `a tree of ${formatCount(edges.length, 'line')}`,
    ring: () => `a closed ring${ringWords()}, ${row()} and back,`,
  }[shape]()
  const runs = edges.map((each) => runOf(country, each))
  const which = (is: (run: Run) => boolean) => formatList(edges.filter((_, k) => is(runs[k]!)).map(between))
  const between = ({ edge: [a, b] }: (typeof edges)[number]) => `${name(a)} and ${name(b)}`
  const doubled = which((run) => run.length === 1 && run[0]!.kinds.length > 1)
  const helped = which((run) => run.length > 1 && run.some((part) => part.kinds.length > 1))
  const joined = which((run) => run.length > 1 && run.every((part) => part.kinds.length === 1))
  const kinds = [
    ...new Set(runs.flat().flatMap((part) => part.kinds.map((kind) => country.wires[kind]!.wire.id))),
  ].map(say.name)
  return [
    `${lay} of ${formatList(kinds)}`,
    ...(doubled ? [`two wires side by side between ${doubled}`] : []),
    ...(helped ? [`a second wire beside the first for a part of the way between ${helped}`] : []),
    ...(joined ? [`one wire joined on to another between ${joined}`] : []),
  ].join(', ')
}

/** The places of a chain from one end to the other, or of a ring once round. */
function orderOf(
  edges: readonly (readonly [number, number])[],
  places: readonly number[],
): readonly number[] {
  const degree = (place: number) => edges.filter((each) => each.includes(place)).length
  const order = [places.find((place) => degree(place) === 1) ?? places[0]!]
  const left = new Set(edges)
  for (;;) {
    const here = order.at(-1)!
    const next = [...left].find((each) => each.includes(here))
    if (!next) break
    left.delete(next)
    order.push(next[0] === here ? next[1] : next[0])
  }
  return order.length > places.length ? order.slice(0, -1) : order
}
