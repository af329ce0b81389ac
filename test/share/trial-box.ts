import { type ChildProcess, fork, spawn } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { connect, createServer, type Socket } from 'node:net'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { jetstreamManager } from '@nats-io/jetstream'
import { connect as dial } from '@nats-io/transport-node'
import { expect } from 'vitest'
import { startBox } from '../../scripts/share/box.mjs'
import { endOrphan, findNatsServer } from '../../scripts/share/nats-server.mjs'
import { startThreeBoxes } from '../../scripts/share/three-boxes.mjs'
import { keysOfInvitation, tagOf } from '../../src/share/plan-keys'
import type { Ask, HandState } from './trial-hand'

export const nats = findNatsServer()
export const ends: (() => unknown)[] = []
/** For `afterEach` of each file: modules are read once for several files, and a hook here would serve the first of them alone. */
export async function endAll(): Promise<void> {
  for (const end of ends.splice(0).reverse()) await end()
}

export function folderOf(): string {
  const folder = mkdtempSync(join(tmpdir(), 'box-'))
  ends.push(() => rmSync(folder, { recursive: true, force: true }))
  return folder
}

export async function box(wish: Partial<Parameters<typeof startBox>[0]> = {}) {
  const folder = wish.folder ?? folderOf()
  const usual = { folder, site: folder, nats: nats!, port: 0, host: '127.0.0.1', pass: PASS }
  const started = await startBox({ ...usual, ...wish })
  ends.push(() => started.stop())
  return started
}

/** The word of the boxes themselves, for trials that look into them. */
const PASS = 'trial'

/** A box that is a leaf of others. */
export const camp = (base: number, wish: Parameters<typeof box>[0] = {}) =>
  box({ base: [`http://127.0.0.1:${base}`], ...wish })

export async function threeBoxes() {
  const folder = folderOf()
  const wish = { folder, site: folder, nats: nats!, port: 0, host: '127.0.0.1', pass: PASS }
  const boxes = await startThreeBoxes(wish)
  ends.push(() => Promise.all(boxes.map((each) => each.stop())))
  return boxes
}

/** A box in a process of its own, which can be killed as a whole; what it told is at hand. */
export async function boxProcess(
  wish: Partial<Parameters<typeof startBox>[0]> & { readonly folder: string },
) {
  const script = `const { startBox } = await import(${JSON.stringify(resolve('scripts/share/box.mjs'))})
    await startBox({ ...JSON.parse(process.argv[1]), tell: (sentence) => console.log(sentence) })
    console.log('up')`
  const args = ['--input-type=module', '-e', script, JSON.stringify({ ...wish, nats, host: '127.0.0.1' })]
  const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'inherit'] })
  ends.push(async () => {
    child.kill('SIGKILL')
    await endOrphan(wish.folder)
  })
  let told = ''
  await new Promise<void>((done) =>
    child.stdout.on('data', (text) => {
      told += text
      if (/^up$/m.test(told)) done()
    }),
  )
  return {
    kill: () => child.kill('SIGKILL'),
    told: () => told,
    memoryKb: () => Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${child.pid}/status`, 'utf8'))?.[1]),
  }
}

/** What a box has of a plan: how many envelopes, who leads in a cluster, and for how long nothing was taken at the longest, ms. */
export async function streamAt(natsPort: number, fragment: string, from = 1) {
  const line = await dial({ servers: `127.0.0.1:${natsPort}`, user: 'box', pass: PASS })
  const manager = await jetstreamManager(line)
  const name = `PLAN_${tagOf(keysOfInvitation(fragment)!)}`
  const { state, cluster } = await manager.streams.info(name)
  const times: number[] = []
  for (let seq = from; seq <= state.last_seq; seq++)
    times.push((await manager.streams.getMessage(name, { seq }))!.time.getTime())
  await line.close()
  const stallMs = Math.max(0, ...times.slice(1).map((time, at) => time - times[at]!))
  return { envelopes: state.messages, leader: cluster?.leader, stallMs, times }
}

/** A hand in a process of its own. */
export async function hand(port: number, fragment?: string) {
  const child: ChildProcess = fork(resolve('scripts/share/measure-part.mjs'), ['tryHand'], {
    execArgv: ['--experimental-websocket', '--no-warnings'],
  })
  ends.push(() => child.kill('SIGKILL'))
  const heard = (what: 'ready' | 'state') =>
    new Promise<HandState>((done, fail) => {
      const gone = () => fail(new Error('the hand has gone'))
      child.once('exit', gone)
      const hear = (word: { ready?: HandState; state?: HandState; result?: { why?: string } }) => {
        if (word.result) fail(new Error(word.result.why ?? 'ended'))
        if (!word[what]) return
        child.off('message', hear)
        child.off('exit', gone)
        done(word[what])
      }
      child.on('message', hear)
    })
  child.send({ port, fragment })
  const ready = await heard('ready')
  const ask = (what: Ask) => {
    child.send(what)
    return heard('state')
  }
  return {
    fragment: ready.fragment,
    kill: () => child.kill('SIGKILL'),
    state: () => ask({ do: 'state' }),
    changeKeys: () => ask({ do: 'change keys' }),
    edit: (from: number, count: number, everyMs: number, letters = 0, among?: number) =>
      ask({ do: 'edit', from, count, everyMs, letters, ...(among && { among }) }),
  }
}
type Hand = Awaited<ReturnType<typeof hand>>

/** Waits until nothing of these hands waits and all have the same plan. Gives it, and how long that took, ms. */
export async function together(
  ...hands: readonly Hand[]
): Promise<{ readonly state: HandState; readonly ms: number }> {
  const begun = performance.now()
  await expect
    .poll(
      async () => {
        const states = await Promise.all(hands.map((each) => each.state()))
        return [new Set(states.map(({ text }) => text)).size, ...states.map(({ waiting }) => waiting)]
      },
      { timeout: 90_000, interval: 200 },
    )
    .toEqual([1, ...hands.map(() => 0)])
  return { state: await hands[0]!.state(), ms: Math.round(performance.now() - begun) }
}

export const numbers = (list: readonly string[]) => [...list].sort()

/** A way to a box that can be made slow, or go quiet with its lines still up, as radio does. */
export async function radio(to: number, bytesPerSecond = Number.POSITIVE_INFINITY, delayMs = 0) {
  let isQuiet = false
  let bytes = 0
  const sockets = new Set<Socket>()
  const pass = (from: Socket, onto: Socket) => {
    let freeAt = 0
    from.on('data', (piece) => {
      bytes += piece.length
      const now = performance.now()
      freeAt = Math.max(freeAt, now) + (piece.length / bytesPerSecond) * 1000
      from.pause()
      const go = () => {
        if (isQuiet) return void setTimeout(go, 100)
        onto.write(piece)
        from.resume()
      }
      setTimeout(go, freeAt - now + delayMs)
    })
  }
  const server = createServer((socket) => {
    const inner = connect(to, '127.0.0.1')
    sockets.add(socket).add(inner)
    pass(socket, inner)
    pass(inner, socket)
    // Not before what was said last.
    const end = () =>
      setTimeout(() => {
        socket.destroySoon()
        inner.destroySoon()
      }, 2 * delayMs)
    for (const each of [socket, inner]) each.on('error', end).on('close', end)
  })
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done))
  ends.push(() => {
    for (const socket of sockets) socket.destroy()
    server.close()
  })
  return {
    port: (server.address() as { port: number }).port,
    /** So many went either way. */
    bytes: () => bytes,
    quiet: (is: boolean) => {
      isQuiet = is
    },
  }
}
