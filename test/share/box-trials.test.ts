import { execFileSync } from 'node:child_process'
import { rmSync, writeFileSync } from 'node:fs'
import { connect, createServer } from 'node:net'
import { join } from 'node:path'
import { jetstream, jetstreamManager } from '@nats-io/jetstream'
import { connect as dial } from '@nats-io/transport-node'
import { afterEach, expect, test } from 'vitest'
import { webFront } from '../../scripts/share/web-front.mjs'
import { keysOfInvitation, passOf, tagOf } from '../../src/share/plan-keys'
import { makeHand, sealed } from '../../src/share/sealed'
import {
  box,
  camp,
  endAll,
  ends,
  folderOf,
  hand,
  nats,
  numbers,
  radio,
  streamAt,
  together,
} from './trial-box'

/** `BOX_TRIALS=1 npx vitest run --project core test/share/box-trials.test.ts` tries all of it, for some minutes; else only the first. */
const LONG = process.env.BOX_TRIALS === '1'
afterEach(endAll)

test.skipIf(!nats)(
  'a box that is killed in the midst of edits has kept each that it had acknowledged, once, and so has its leaf',
  async () => {
    const one = await box()
    const leaf = await camp(one.port)
    const first = await hand(one.port)
    const second = await hand(leaf.port, first.fragment)
    const working = [first.edit(0, 30, 40), second.edit(50, 30, 40)]
    await new Promise((done) => setTimeout(done, 500))
    process.kill(one.natsPid()!, 'SIGKILL')
    const made = (await Promise.all(working)).flatMap((each) => each.made)
    const { state } = await together(first, second)
    expect(numbers(state.marks)).toEqual(numbers(made))
    const [there, here] = await Promise.all(
      [one, leaf].map((each) => streamAt(each.natsPort, first.fragment)),
    )
    expect(there!.envelopes).toBe(here!.envelopes)
  },
  120_000,
)

test.skipIf(!nats || !LONG)(
  'a hand that is killed in the midst of edits leaves all that was acknowledged, and stops nobody',
  async () => {
    const one = await box()
    const first = await hand(one.port)
    const second = await hand(one.port, first.fragment)
    void second.edit(50, 200, 20).catch(() => undefined)
    await new Promise((done) => setTimeout(done, 1500))
    second.kill()
    await first.edit(0, 10, 20)
    const { state } = await together(first)
    const third = await hand(one.port, first.fragment)
    await third.edit(30, 5, 20)
    const after = await together(first, third)
    expect(after.state.marks.length).toBeGreaterThanOrEqual(state.marks.length)
    // What the killed hand had sent is there in its order, with no gap.
    const own = after.state.marks.flatMap((mark) =>
      Number(mark.split('-')[1]) >= 50 ? [Number(mark.split('-')[1])] : [],
    )
    expect(own.sort((a, b) => a - b)).toEqual(own.map((_, at) => 50 + at))
    expect(own.length).toBeGreaterThan(20)
    console.log(`killed hand: ${own.length} of its edits are there`)
  },
  120_000,
)

test.skipIf(!nats || !LONG)(
  'a link that is quiet for 30 s: both go on, and come together when it is back',
  async () => {
    const one = await box()
    const link = await radio(one.port)
    const first = await hand(one.port)
    const second = await hand(link.port, first.fragment)
    await together(first, second)
    link.quiet(true)
    const made = (await Promise.all([first.edit(1, 49, 540), second.edit(50, 50, 540)])).flatMap(
      ({ made }) => made,
    )
    await new Promise((done) => setTimeout(done, 3000))
    expect((await second.state()).waiting).toBeGreaterThan(0)
    link.quiet(false)
    const { state, ms } = await together(first, second)
    expect(numbers(state.marks)).toEqual(numbers(made))
    console.log(`quiet for 30 s, 100 edits: together ${ms} ms after`)
  },
  180_000,
)

test.skipIf(!nats || !LONG)(
  'a link of 4 KB a second and 300 ms each way',
  async () => {
    const one = await box()
    const link = await radio(one.port, 4096, 300)
    const first = await hand(one.port)
    const second = await hand(link.port, first.fragment)
    const made = (await Promise.all([first.edit(0, 30, 500), second.edit(50, 30, 500)])).flatMap(
      ({ made }) => made,
    )
    const { state, ms } = await together(first, second)
    expect(numbers(state.marks)).toEqual(numbers(made))
    console.log(`4 KB/s and 300 ms: 60 edits together ${ms} ms after the last`)
  },
  180_000,
)

test.skipIf(!nats || !LONG || process.getuid?.() !== 0)(
  'a disk with no room: it is said, nothing is lost, and it goes on when there is room',
  async () => {
    const folder = folderOf()
    execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=16m', 'tmpfs', folder])
    ends.push(() => execFileSync('umount', ['-l', folder]))
    const one = await box({ folder })
    const first = await hand(one.port)
    const second = await hand(one.port, first.fragment)
    await first.edit(0, 5, 50)
    await together(first, second)
    const filler = join(folder, 'filler')
    try {
      writeFileSync(filler, Buffer.alloc(16 * 1024 * 1024))
    } catch {
      // It takes as much as there is room for.
    }
    const { made } = await first.edit(5, 20, 100, 5000)
    await expect
      .poll(async () => (await first.state()).said.join(' '), { timeout: 60_000 })
      .toMatch(/no (more )?room/)
    console.log(`full disk: ${(await first.state()).said.filter(Boolean).join(' | ')}`)
    rmSync(filler)
    const { state, ms } = await together(first, second)
    expect(numbers(state.marks)).toEqual(numbers(made))
    console.log(`full disk: together ${ms} ms after there was room`)
  },
  240_000,
)

test.skipIf(!nats || !LONG)(
  'a plan that has used up its room on the box: it is said, and new keys give it a fresh start',
  async () => {
    const one = await box({ planBytes: 120_000 })
    const first = await hand(one.port)
    const second = await hand(one.port, first.fragment)
    await first.edit(0, 90, 30, 3000, 5)
    await expect
      .poll(async () => (await first.state()).said.join(' '), { timeout: 30_000 })
      .toMatch(/no more room for this plan/)
    expect((await first.state()).waiting).toBeGreaterThan(0)
    const { fragment } = await first.changeKeys()
    const third = await hand(one.port, fragment)
    const { state } = await together(first, third)
    expect(state.marks).toHaveLength(90)
    console.log(`full plan: ${(await second.state()).said.filter(Boolean).join(' | ')}`)
  },
  120_000,
)

test.skipIf(!nats || !LONG)(
  'whoever is left behind by new keys is told so',
  async () => {
    const one = await box()
    const first = await hand(one.port)
    const second = await hand(one.port, first.fragment)
    await first.edit(0, 3, 20)
    await first.changeKeys()
    await expect.poll(async () => (await second.state()).standing).toBe('moved')
    expect((await second.state()).said.join(' ')).toMatch(/has given the plan new keys/)
  },
  60_000,
)

test.skipIf(!nats || !LONG)(
  'one visitor asks for no more than 60 plans an hour',
  async () => {
    const one = await box()
    // What is no plan counts too.
    const answers: number[] = []
    for (let at = 0; at < 70; at++)
      answers.push(
        (await fetch(`http://127.0.0.1:${one.port}/share/plans`, { method: 'POST', body: '{}' })).status,
      )
    expect([400, 429].map((status) => answers.filter((each) => each === status).length)).toEqual([60, 10])
  },
  60_000,
)

test.skipIf(!nats || !LONG)(
  'a hand that lays down nonsense, as beginnings and as edits, keeps nobody out and stops nobody',
  async () => {
    const one = await box()
    const first = await hand(one.port)
    await first.edit(0, 5, 20)
    await together(first)
    const keys = keysOfInvitation(first.fragment)!
    const tag = tagOf(keys)
    const line = await dial({
      ...{ servers: `127.0.0.1:${one.natsPort}`, user: `${tag}.w`, pass: passOf(keys).write! },
      inboxPrefix: `_INBOX.${tag}`,
    })
    const stream = jetstream(line)
    const hostile = makeHand(keys.write!)
    const nonsense = [
      new Uint8Array(500),
      sealed({ begin: { plan: '{}', state: {}, upTo: 1e9 } }, hostile, keys),
      sealed({ step: [1, 2, [{ k: 'stations/s1/position', v: ['x'] }]] }, hostile, keys),
      sealed('x'.repeat(100_000), hostile, keys),
    ]
    for (const bytes of nonsense)
      for (const subject of ['begin', 'edits']) await stream.publish(`plan.${tag}.${subject}`, bytes)
    // Nor can this hand look at other plans, or take anything out of its own.
    await expect(jetstreamManager(line).then((manager) => manager.streams.names().next())).rejects.toThrow()
    await expect(line.request(`$JS.API.STREAM.PURGE.PLAN_${tag}`, '', { timeout: 1000 })).rejects.toThrow()
    const second = await hand(one.port, first.fragment)
    await second.edit(50, 5, 20)
    const { state } = await together(first, second)
    expect(state.marks).toHaveLength(10)
    expect((await first.state()).said.filter(Boolean).length).toBeGreaterThan(0)
    await line.close()
  },
  60_000,
)

test.skipIf(!LONG)(
  'one visitor sends no more than half a megabyte a second after the first 16',
  async () => {
    let taken = 0
    const inner = createServer((socket) =>
      socket.on('data', ({ length }) => (taken += length)).on('error', () => {}),
    )
    await new Promise<void>((done) => inner.listen(0, '127.0.0.1', done))
    const wsPort = () => (inner.address() as { port: number }).port
    const front = webFront({ site: folderOf(), isFull: () => false, wsPort, onNewPlan: async () => '' })
    await new Promise<void>((done) => front.server.listen(0, '127.0.0.1', () => done()))
    const socket = connect((front.server.address() as { port: number }).port, '127.0.0.1')
    socket.on('error', () => undefined)
    socket.write('GET /share/ws HTTP/1.1\r\nHost: x\r\nUpgrade: websocket\r\nConnection: Upgrade\r\n\r\n')
    const begun = performance.now()
    while (performance.now() - begun < 6000)
      if (!socket.write(Buffer.alloc(65_536))) await new Promise((done) => setTimeout(done, 20))
    socket.destroy()
    inner.close()
    await front.close()
    console.log(`flood: ${(taken / 1e6).toFixed(1)} MB taken of one visitor in 6 s`)
    expect(taken).toBeGreaterThan(15 * 1024 * 1024)
    expect(taken).toBeLessThan((16 + 6) * 1024 * 1024)
  },
  60_000,
)
