import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, expect, test } from 'vitest'
import { freePort } from '../../scripts/share/nats-server.mjs'
import { makeKeys, passOf, tagOf } from '../../src/share/plan-keys'
import * as trials from './trial-box'
import { box, boxProcess, camp, folderOf, hand, nats, numbers, radio, streamAt, together } from './trial-box'

/** `BOX_TRIALS=1 npx vitest run --project core test/share/beyond-one-box.test.ts` tries all of it, for some minutes. */
const trial = test.skipIf(!nats || process.env.BOX_TRIALS !== '1')
const LONG = { timeout: 300_000 }
afterEach(trials.endAll)

const allOf = (works: readonly { readonly made: readonly string[] }[]) =>
  numbers(works.flatMap(({ made }) => made))
const seconds = (count: number) => new Promise((done) => setTimeout(done, count * 1000))
const post = (port: number, plan: object) =>
  fetch(`http://127.0.0.1:${port}/share/plans`, { method: 'POST', body: JSON.stringify(plan) })

trial.for(['leader', 'follower'])('the %s of three is killed in the midst of edits', LONG, async (who) => {
  const boxes = await trials.threeBoxes()
  const at = Object.fromEntries(
    boxes.map(({ natsPid, port, natsPort }, index) => [`box-${index + 1}`, { natsPid, port, natsPort }]),
  )
  const first = await hand(boxes[0]!.port)
  const { leader } = await streamAt(boxes[0]!.natsPort, first.fragment)
  const follower = Object.keys(at).find((name) => name !== leader && name !== 'box-1')!
  const killed = who === 'leader' ? leader! : follower
  const others = Object.keys(at).filter((name) => name !== killed)
  const second = await hand(at[others[0]!]!.port, first.fragment)
  const third = await hand(at[others[1]!]!.port, first.fragment)
  const working = [first, second, third].map((each, index) => each.edit(33 * index, 33, 300))
  await seconds(3)
  process.kill(at[killed]!.natsPid()!, 'SIGKILL')
  const made = allOf(await Promise.all(working))
  const { state, ms } = await together(first, second, third)
  expect(numbers(state.marks)).toEqual(made)
  const { stallMs, envelopes } = await streamAt(at[others[0]!]!.natsPort, first.fragment, 2)
  console.log(
    `${who} of three killed: ${made.length} edits, ${envelopes} envelopes, longest stall ${stallMs} ms, together ${ms} ms after the last`,
  )
})

trial('two hands at a camp and two at its base go on while the link is quiet for 30 s', LONG, async () => {
  const base = await trials.threeBoxes()
  const link = await radio(base[0]!.port)
  const told: string[] = []
  const leaf = await camp(link.port, { tell: (sentence) => told.push(sentence) })
  const one = await hand(base[1]!.port)
  const two = await hand(base[2]!.port, one.fragment)
  const three = await hand(leaf.port, one.fragment)
  const four = await hand(leaf.port, one.fragment)
  const hands = [one, two, three, four]
  await together(...hands)
  link.quiet(true)
  const made = allOf(await Promise.all(hands.map((each, at) => each.edit(25 * at, 25, 1200))))
  const [atBase, atCamp] = await Promise.all([one.state(), three.state()])
  // Nobody waits for the link, and each side has its own two together.
  expect([atBase.waiting, atCamp.waiting]).toEqual([0, 0])
  expect([atBase.marks.length, atCamp.marks.length]).toEqual([50, 50])
  link.quiet(false)
  const { state, ms } = await together(...hands)
  expect(numbers(state.marks)).toEqual(made)
  expect(told.join(' ')).toMatch(/is reached.*is not reached.*is reached/)
  const ports = [base[0]!.natsPort, leaf.natsPort]
  const [up, down] = await Promise.all(ports.map((port) => streamAt(port, one.fragment)))
  expect(up!.envelopes).toBe(down!.envelopes)
  console.log(`leaf: quiet for 30 s, 100 edits: together ${ms} ms after; ${up!.envelopes} envelopes each`)
})

trial(
  'a camp is killed as a whole in the midst of edits, twice, and has lost where it was',
  LONG,
  async () => {
    const base = await box()
    const link = await radio(base.port, 40_000, 50)
    const [port, folder] = [await freePort(), folderOf()]
    const wish = { folder, site: folder, port, base: [`http://127.0.0.1:${link.port}`] }
    let leaf = await boxProcess(wish)
    const one = await hand(base.port)
    const two = await hand(port, one.fragment)
    const working = [one.edit(0, 50, 300), two.edit(50, 50, 300)]
    for (const state of [undefined, '{"broken'] as const) {
      await seconds(4)
      leaf.kill()
      await seconds(0.5)
      if (state) writeFileSync(join(folder, 'forwarded.json'), state)
      leaf = await boxProcess(wish)
    }
    const made = allOf(await Promise.all(working))
    const { state, ms } = await together(one, two)
    expect(numbers(state.marks)).toEqual(made)
    const { envelopes } = await streamAt(base.natsPort, one.fragment)
    console.log(
      `camp killed twice: 100 edits, ${envelopes} envelopes at the base, together ${ms} ms after the last`,
    )
  },
)

trial('camps in a chain and beside each other: all have all, and nothing goes round', LONG, async () => {
  const base = await box()
  const camps = [await camp(base.port), await camp(base.port)]
  const beyond = await camp(camps[1]!.port)
  const boxes = [base, ...camps, beyond]
  const one = await hand(camps[0]!.port)
  const others = []
  for (const each of [base, camps[1]!, beyond]) others.push(await hand(each.port, one.fragment))
  const hands = [one, ...others]
  const made = allOf(await Promise.all(hands.map((each, at) => each.edit(25 * at, 25, 50))))
  const { state, ms } = await together(...hands)
  expect(numbers(state.marks)).toEqual(made)
  await seconds(3)
  const counts = await Promise.all(boxes.map(({ natsPort }) => streamAt(natsPort, one.fragment)))
  // One beginning and a hundred steps, at each.
  expect(counts.map(({ envelopes }) => envelopes)).toEqual([101, 101, 101, 101])
  console.log(`four boxes in a chain: 100 edits, together ${ms} ms after the last`)
})

trial('a base whose folder is lost has all again from a camp', LONG, async () => {
  const port = await freePort()
  const before = await box({ port })
  const leaf = await camp(port)
  const one = await hand(port)
  const two = await hand(leaf.port, one.fragment)
  const made = [await one.edit(0, 30, 20), await two.edit(50, 30, 20)]
  await together(one, two)
  await before.stop()
  const meanwhile = [one.edit(30, 10, 20), two.edit(80, 10, 20)]
  await box({ port })
  await Promise.all(meanwhile)
  const { state } = await together(one, two)
  expect(state.marks).toHaveLength(80)
  expect(state.marks).toEqual(expect.arrayContaining(made.flatMap((each) => [...each.made])))
  // Whoever comes anew finds all at the base.
  const three = await hand(port, one.fragment)
  expect(numbers((await together(one, three)).state.marks)).toEqual(numbers(state.marks))
})

trial('a base with no more room for a plan: it is told, and the camp goes on', LONG, async () => {
  const told: string[] = []
  const base = await box({ planBytes: 60_000 })
  const leaf = await camp(base.port, { tell: (sentence) => told.push(sentence) })
  const one = await hand(leaf.port)
  const two = await hand(leaf.port, one.fragment)
  await one.edit(0, 90, 30, 3000, 5)
  const { state } = await together(one, two)
  expect(state.marks).toHaveLength(90)
  await expect.poll(() => told.join(' ')).toMatch(/the base has no more room for it/i)
})

trial('a base takes 60 new plans an hour: the others wait, those that it has go on', LONG, async () => {
  const told: string[] = []
  const [base, folder] = [await box(), folderOf()]
  // What is no plan counts too.
  for (let at = 0; at < 30; at++) await post(base.port, {})
  const alone = await box({ folder })
  for (let at = 0; at < 40; at++) {
    const keys = makeKeys()
    await post(alone.port, { tag: tagOf(keys), ...passOf(keys) })
  }
  await alone.stop()
  await camp(base.port, { folder, mostLines: 7, tell: (sentence) => told.push(sentence) })
  await expect.poll(() => told.join(' '), { timeout: 60_000 }).toMatch(/10 of the plans stay apart/)
  console.log(told.at(-1))
})

trial.for([
  ['a fast link', Number.POSITIVE_INFINITY, 0],
  ['4 KB a second and 300 ms each way', 4096, 300],
] as const)('what 300 edits weigh on %s, and how soon they are over', LONG, async ([name, pace, delayMs]) => {
  const [base, port, folder] = [await box(), await freePort(), folderOf()]
  const link = await radio(base.port, pace, delayMs)
  const alone = await boxProcess({ folder, site: folder, port })
  const one = await hand(port)
  await one.edit(0, 300, 5)
  await together(one)
  alone.kill()
  const begun = performance.now()
  const leaf = await boxProcess({ folder, site: folder, port, base: [`http://127.0.0.1:${link.port}`] })
  const here = () =>
    streamAt(base.natsPort, one.fragment, Number.POSITIVE_INFINITY).then(
      ({ envelopes }) => envelopes,
      () => 0,
    )
  await expect.poll(here, { timeout: 200_000, interval: 200 }).toBe(301)
  const ms = performance.now() - begun
  // What went up comes back once, and is left there.
  await seconds(pace < 1e6 ? 60 : 10)
  const bytes = link.bytes()
  one.kill()
  await seconds(20)
  console.log(
    `${name}: 300 edits and a beginning are over after ${(ms / 1000).toFixed(1)} s, ${bytes} bytes; ${link.bytes() - bytes} bytes in 20 s with no news; the camp's process takes ${leaf.memoryKb()} KB`,
  )
})
