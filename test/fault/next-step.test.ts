import { expect, test } from 'vitest'
import type { Evidence } from '../../src/fault/evidence'
import { locateFault } from '../../src/fault/locate'
import { simulator } from '../simulator/volts-at'
import { type Planted, planted } from './planted'
import { modelOf, take, type Volts } from './planted-evidence'

// `SEARCHES=12` (or more) walks as many and asks for more, `TELL=1` tells of each.
const SEARCHES = Number(process.env.SEARCHES ?? 2)

/** A tag for each so many metres of wire, and one at each end. */
const TAG_EVERY_M = 500

const tagsOn = ({ lines }: Planted) =>
  lines.flatMap(({ id, wireM }) => {
    const count = Math.ceil(wireM / TAG_EVERY_M)
    return Array.from({ length: count + 1 }, (_, k) => ({ line: id, wireM: (wireM * k) / count }))
  })

type Place = string | { readonly line: string; readonly wireM: number }

/** Wire from s0 to a place: lines lead away from it. */
function outM({ lines }: Planted, place: Place): number {
  if (typeof place === 'string') {
    const line = lines.find(({ to }) => to === place)
    return line ? outM({ lines } as Planted, line.from) + line.wireM : 0
  }
  const line = lines.find(({ id }) => id === place.line)!
  return outM({ lines } as Planted, line.from) + place.wireM
}

/** Stations from s0 out to a place, the place's own line last. */
const wayOut = ({ lines }: Planted, place: Place): readonly string[] => {
  const line = lines.find(({ id, to }) => (typeof place === 'string' ? to === place : id === place.line))
  return line ? [...wayOut({ lines } as Planted, line.from), line.id] : []
}

/** Wire between two places of a net without rings. */
function apartM(fault: Planted, a: Place, b: Place): number {
  const [first, second] = [wayOut(fault, a), wayOut(fault, b)]
  let shared = 0
  while (shared < first.length && first[shared] === second[shared]) shared++
  const joint = (way: readonly string[]) => (shared < way.length ? shared : shared - 1)
  // On one way the nearer lies before the farther; else both lead back to where they part.
  if (shared === first.length || shared === second.length) return Math.abs(outM(fault, a) - outM(fault, b))
  const parts = fault.lines.find(({ id }) => id === first[joint(first)])!.from
  return outM(fault, a) + outM(fault, b) - 2 * outM(fault, parts)
}

/** Metres walked by who does what comes first each time, until the fault is seen. */
async function byNext(
  fault: Planted,
  volts: Volts,
): Promise<{ readonly walkedM: number; readonly steps: number }> {
  const { plan, model } = modelOf(fault)
  const tags = tagsOn(fault)
  const evidence: Evidence[] = []
  const truth = { line: fault.line, wireM: fault.wireM }
  let at: Place = 's0'
  let walkedM = 0
  for (let steps = 1; steps <= 25; steps++) {
    const { next } = locateFault(plan, model, evidence, tags)
    const [step] = next
    if (!step) return { walkedM, steps }
    walkedM += apartM(fault, at, step.at)
    at = step.at
    if (!step.take) {
      const { line, wireM } = step.at as { line: string; wireM: number }
      const [fromM, toM] = [Math.min(wireM, step.until!.wireM), Math.max(wireM, step.until!.wireM)]
      if (fault.line === line && fault.wireM >= fromM && fault.wireM <= toM)
        return { walkedM: walkedM + apartM(fault, at, truth), steps }
      walkedM += toM - fromM
      at = step.until!
      evidence.push({ sound: { line, fromM, toM } })
      continue
    }
    const { what, far, toward } = step.take
    const stand = typeof at === 'string' ? { at } : at
    const look = { stand, toward, far: far as 'open' | 'short', what: what as 'loopOhms' | 'nanoF' }
    evidence.push(await take(fault, look, volts))
    // Who stands beside it sees it.
    if (typeof at !== 'string' && apartM(fault, at, truth) < 5) return { walkedM, steps }
  }
  return { walkedM, steps: 25 }
}

/**
 * Metres walked by who halves: to the tag in the middle of what is left of the longest way through the net, rings both ways, and on to the
 * middle of the silent side; the last piece is walked along. US Army subcourse SS0440, p. 2-12 and 2-13.
 */
function byHalving(fault: Planted): number {
  const truth = { line: fault.line, wireM: fault.wireM }
  const fullM = outM(fault, truth)
  // The way from s0 over the fault's own line to its end: that the fault lies on this way the halving is given for nothing.
  const own = fault.lines.find(({ id }) => id === fault.line)!
  const endM = outM(fault, own.to)
  const tags = [0]
  for (let m = TAG_EVERY_M; m < endM; m += TAG_EVERY_M) tags.push(m)
  tags.push(endM)
  let [low, high, atM, walkedM] = [0, tags.length - 1, 0, 0]
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2)
    walkedM += Math.abs(tags[middle]! - atM)
    atM = tags[middle]!
    if (fullM < atM) high = middle
    else low = middle
  }
  return walkedM + Math.abs(fullM - atM)
}

test('who does what comes first walks little more than to the fault, and far less than who halves', {
  timeout: 3_600_000,
}, async () => {
  const volts = await simulator()
  let [walked, halved, straight] = [0, 0, 0]
  for (let seed = 1; seed <= SEARCHES; seed++) {
    const fault = planted(seed)
    const { walkedM, steps } = await byNext(fault, volts)
    const halvingM = byHalving(fault)
    walked += walkedM
    halved += halvingM
    straight += outM(fault, { line: fault.line, wireM: fault.wireM })
    if (process.env.TELL)
      console.log(
        seed,
        fault.kind,
        walkedM.toFixed(0),
        'm in',
        steps,
        'steps; halving',
        halvingM.toFixed(0),
        'straight',
        outM(fault, { line: fault.line, wireM: fault.wireM }).toFixed(0),
      )
  }
  console.log(
    `walked ${(walked / 1000).toFixed(1)} km, halving ${(halved / 1000).toFixed(1)} km, straight there ${(straight / 1000).toFixed(1)} km`,
  )
  expect(walked).toBeLessThan(halved)
  // Nobody can walk less than straight there: what can be saved is the rest, and half of it is to be.
  if (SEARCHES >= 12) expect(walked - straight).toBeLessThan((halved - straight) / 2)
})
