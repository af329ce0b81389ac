import { carriedOver, mendedBack } from '../../src/journal/carried-over'
import type { Edit } from '../../src/journal/edit'
import { Journal } from '../../src/journal/journal'
import type { Plan } from '../../src/plan/plan'
import { EMPTY_PLAN } from '../../src/plan/plan'
import { type Step, takeStep } from '../plan/random-edits'

/** Numbers by chance from a seed: mulberry32. */
export function chanceFrom(seed: number): () => number {
  let state = seed
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }
}

const WORDS = ['', 'Camp', 'Ford', 'Mill', '🗻/~', 'a "quoted" name', '__proto__']

function stepBy(chance: () => number): Step {
  const upTo = (most: number) => Math.floor(chance() * (most + 1))
  return {
    edit: upTo(1000),
    picks: [upTo(60), upTo(60), upTo(60)],
    position: [chance() * 360 - 180, chance() * 170 - 85],
    figure: chance() < 0.3 ? upTo(60) : chance() * 60,
    words: WORDS[upTo(WORDS.length - 1)]!,
  }
}

interface Hand {
  readonly name: string
  readonly journal: Journal
  readonly skewMs: number
  plan: Plan
  past: Plan[]
  /** What the others have sent and has not arrived: in any order, some of it more than once. */
  readonly inbox: (readonly Edit[])[]
}

export interface History {
  readonly base: Plan
  readonly hands: readonly Hand[]
  readonly edits: readonly Edit[]
  /** What each hand's own undoing of a step changed of what others had set; must stay empty. */
  readonly trespasses: readonly string[]
}

/** 2 to 8 hands change one plan apart, undo now and then, and hear of each other late, twice and in any order. In the end all have met, unless they are to part. */
export function randomHistory(seed: number, length: number, meet = true): History {
  const chance = chanceFrom(seed)
  let base = EMPTY_PLAN
  for (let k = 0; k < 30; k++) base = takeStep(base, stepBy(chance), `b${k}`)
  const count = 2 + Math.floor(chance() * 7)
  const hands: Hand[] = Array.from({ length: count }, (_, at) => ({
    name: `hand${at}`,
    journal: new Journal('one', base),
    skewMs: Math.floor((chance() - 0.5) * 1e7),
    plan: base,
    past: [],
    inbox: [],
  }))
  const edits: Edit[] = []
  const trespasses: string[] = []
  let clockMs = 1.7e12
  /** Hands in different parts hear nothing of each other. */
  let parts = hands.map(() => 0)

  const hear = (hand: Hand, share: number) => {
    const kept: (readonly Edit[])[] = []
    const heard: (readonly Edit[])[] = []
    for (const step of hand.inbox.splice(0).sort(() => chance() - 0.5))
      (chance() < share ? heard : kept).push(step)
    // Some of it comes again.
    hand.inbox.push(...kept, ...heard.filter(() => chance() < 0.1))
    const { changed, refused } = hand.journal.take(heard.flat())
    if (refused.length > 0) throw new Error(refused.join(' '))
    if (changed.size === 0) return
    hand.past = hand.past.map((plan) => carriedOver(plan, changed, hand.journal))
    hand.plan = hand.journal.mended().plan
  }
  const send = (from: Hand, written: readonly Edit[]) => {
    const sent = JSON.parse(JSON.stringify(written)) as Edit[]
    edits.push(...sent)
    for (const other of hands) if (other !== from) other.inbox.push(chance() < 0.1 ? sent.toReversed() : sent)
  }
  const undo = (hand: Hand) => {
    const back = hand.past.pop()
    if (!back) return
    const others = new Map(
      edits.filter(({ hand: name }) => name !== hand.name).map((edit) => [edit.key, edit] as const),
    )
    const { plan: next, mended } = mendedBack(back, hand.plan, hand.journal)
    const written = hand.journal.write(hand.name, hand.plan, next, clockMs + hand.skewMs)
    for (const { key, over, value } of written) {
      // What stands before what is nobody's.
      if (/\/$|^circuits\/[^/]*\/lines\//.test(key) && value !== undefined) continue
      // A circuit that fell into pieces has handed its lines and telephones on to those.
      const [kind, , part, name] = key.split('/')
      const goesOn = [...next.circuits.values()].some(({ lines, sets }) =>
        part === 'lines' ? (lines as readonly string[]).includes(name!) : sets.has(name as never),
      )
      if (kind === 'circuits' && part !== '' && goesOn) continue
      const theirs = others.get(key)
      // Where what is gone back to contradicted what others did, it was mended.
      if (mended.length === 0 && theirs && over.includes(`${theirs.hand}:${theirs.number}`))
        trespasses.push(key)
    }
    send(hand, written)
    hand.plan = next
  }

  for (let k = 0; k < length; k++) {
    clockMs += Math.floor(chance() * 5000)
    const hand = hands[Math.floor(chance() * count)]!
    if (chance() < 0.05) parts = hands.map(() => Math.floor(chance() * 2))
    if (chance() < 0.1) undo(hand)
    else if (chance() < 0.65) {
      const next = takeStep(hand.plan, stepBy(chance), `${hand.name}-${k}`)
      if (next === hand.plan) continue
      hand.past.push(hand.plan)
      send(hand, hand.journal.write(hand.name, hand.plan, next, clockMs + hand.skewMs))
      hand.plan = next
    } else if (parts[hands.indexOf(hand)] === 0) hear(hand, 0.5)
  }
  // A share of 2 lets everything through; what comes twice is known by then.
  if (meet) for (const hand of hands) while (hand.inbox.length > 0) hear(hand, 2)
  return { base, hands, edits, trespasses }
}
