import type { simulator } from './volts-at'

type VoltsAt = Awaited<ReturnType<typeof simulator>>

/** So many circuits are solved as one: each run of the simulator costs more than what is in it. */
const AT_ONCE = 60

interface Wanted {
  readonly cards: readonly string[]
  readonly nodes: readonly string[]
  readonly hz: number
  readonly done: (volts: readonly number[]) => void
  readonly failed: (fault: unknown) => void
}

/** The same simulator for circuits that are asked for side by side: those of one frequency are subcircuits of one run. */
export function manyAtOnce(volts: VoltsAt): VoltsAt {
  let waiting: Wanted[] = []
  const solve = async () => {
    const all = waiting
    waiting = []
    for (const hz of new Set(all.map((each) => each.hz))) {
      const ofHz = all.filter((each) => each.hz === hz)
      for (let from = 0; from < ofHz.length; from += AT_ONCE) {
        const group = ofHz.slice(from, from + AT_ONCE)
        // A subcircuit has a port at least: this one goes nowhere.
        const cards = group.flatMap((each, k) => [
          `.subckt part${k} port${k}`,
          ...each.cards,
          `Rport${k} port${k} 0 1`,
          '.ends',
          `x${k} port${k} part${k}`,
        ])
        const nodes = group.flatMap((each, k) => each.nodes.map((node) => `x${k}.${node}`))
        try {
          const found = await volts(cards, nodes, hz)
          let at = 0
          for (const each of group) {
            each.done(found.slice(at, at + each.nodes.length))
            at += each.nodes.length
          }
        } catch (fault) {
          for (const each of group) each.failed(fault)
        }
      }
    }
  }
  return (cards, nodes, hz) =>
    new Promise((done, failed) => {
      if (waiting.length === 0) setTimeout(() => void solve())
      waiting.push({ cards, nodes, hz, done, failed })
    })
}
