import { effect } from '@preact/signals'
import type { Edit } from '../../src/journal/edit'
import type { StationId } from '../../src/plan/id'
import { newJournal } from '../../src/share/new-journal'
import { packedStep } from '../../src/share/packed-step'
import { invitation, keysOfInvitation, makeKeys, passOf, tagOf } from '../../src/share/plan-keys'
import { Room } from '../../src/share/room'
import { makeHand, sealed } from '../../src/share/sealed'
import { joinByFragment } from '../../src/share/share'
import { createStore } from '../../src/state/store'
import { bigPlan } from '../bench/big-plan'

interface Told {
  readonly fragment: string
  readonly beginning: string
  readonly stations: number
  readonly port: number
  readonly natsPort: number
  readonly hands: number
  readonly seconds: number
}
interface Connection {
  readonly close: () => Promise<void>
}
interface Ways extends Told {
  readonly say: (word: object) => void
  readonly go: Promise<unknown>
  readonly connect: (options: object) => Promise<Connection>
  readonly jetstream: (line: Connection) => {
    readonly publish: (subject: string, bytes: Uint8Array, options: object) => Promise<unknown>
  }
}

const measuredPlan = (stations: number) => bigPlan({ stations, perCircuit: 10, bends: 20 })

/** A moved station says in its longitude when it was sent: so many degrees for each millisecond since the hour, a tenth of a millimetre each. */
const DEG_PER_MS = 1e-9
const HOUR_MS = 3_600_000

/** What all parts of a measurement are told: a plan that is shared on the box. */
export async function sharedForMeasuring(stations: number, announce: (plan: object) => Promise<unknown>) {
  const keys = makeKeys()
  const { read, write } = passOf(keys)
  await announce({ tag: tagOf(keys), read, write })
  const room = new Room(keys, newJournal(measuredPlan(stations)), makeHand(keys.write!))
  const beginning = Buffer.from(room.beginning(0)!).toString('base64')
  return { fragment: invitation(keys, true), beginning, stations }
}

const share = (list: readonly number[], part: number): number => {
  const sorted = list.toSorted((a, b) => a - b)
  return Math.round(sorted[Math.floor((sorted.length - 1) * part)]! * 10) / 10
}

/** Hands that send and do not read, each with a line of its own. */
export async function send({ fragment, beginning, stations, natsPort, hands, seconds, ...ways }: Ways) {
  const keys = keysOfInvitation(fragment)!
  const tag = tagOf(keys)
  const { write } = passOf(keys)
  const plan = measuredPlan(stations)
  const ids = [...plan.stations.keys()]
  const lines = await Promise.all(
    Array.from({ length: hands }, () =>
      ways.connect({
        ...{ servers: `127.0.0.1:${natsPort}`, user: `${tag}.w`, pass: write },
        inboxPrefix: `_INBOX.${tag}`,
      }),
    ),
  )
  const [first] = lines
  await ways
    .jetstream(first!)
    .publish(`plan.${tag}.begin`, Buffer.from(beginning, 'base64'), { msgID: 'begin' })
  ways.say({ ready: true })
  await ways.go
  const [bytes, acks]: [number[], number[]] = [[], []]
  const ends = performance.now() + seconds * 1000
  const work = async (line: Connection, at: number) => {
    const hand = makeHand(keys.write!)
    const stream = ways.jetstream(line)
    const last = new Map<StationId, string>()
    await new Promise((done) => setTimeout(done, (at * 500) / hands))
    for (let number = 1; performance.now() < ends; number++) {
      const begun = performance.now()
      const id = ids[(at * 37 + number * 101) % ids.length]!
      const [lon, lat] = plan.stations.get(id)!.position
      const now = Date.now()
      const over = last.has(id) ? [last.get(id)!] : []
      const edit: Edit = {
        ...{ hand: hand.name, number, at: now, key: `stations/${id}/position`, over },
        value: [lon + (now % HOUR_MS) * DEG_PER_MS, lat],
      }
      last.set(id, `${hand.name}:${number}`)
      const envelope = sealed({ step: packedStep([edit]) }, hand, keys)
      bytes.push(envelope.length)
      const asked = performance.now()
      await stream.publish(`plan.${tag}.edits`, envelope, { msgID: `${hand.name}:${number}` })
      acks.push(performance.now() - asked)
      await new Promise((done) => setTimeout(done, Math.max(0, 500 - (performance.now() - begun))))
    }
  }
  await Promise.all(lines.map(work))
  await Promise.all(lines.map((line) => line.close()))
  return {
    ...{ hands, stations, edits: bytes.length },
    toDiskMs: { median: share(acks, 0.5), p95: share(acks, 0.95) },
    bytesAnEdit: Math.round(bytes.reduce((sum, each) => sum + each, 0) / bytes.length),
    beginningKb: Math.round((beginning.length * 0.75) / 1024),
  }
}

/** One hand that reads along by the page's own ways: what a screen does, short of drawing. */
export async function observe({ fragment, stations, port, seconds, say, go }: Ways) {
  Object.assign(globalThis, { location: new URL(`http://127.0.0.1:${port}/`) })
  const store = createStore()
  const said = await joinByFragment(store, fragment)
  if (said) throw new Error(said)
  const begun = measuredPlan(stations).stations
  const seen = new Map(store.plan.peek().stations)
  const delays: number[] = []
  let reports = 0
  effect(() => {
    const { circuits } = store.report.value
    if (circuits.length === 0) return
    const now = Date.now()
    reports += 1
    for (const [id, station] of store.plan.peek().stations) {
      if (seen.get(id) === station) continue
      seen.set(id, station)
      const sentMs = Math.round((station.position[0] - begun.get(id)!.position[0]) / DEG_PER_MS)
      if (sentMs > 0) delays.push((((now % HOUR_MS) - sentMs) % HOUR_MS) + 0)
    }
  })
  say({ ready: true })
  await go
  const before = process.cpuUsage()
  await new Promise((done) => setTimeout(done, seconds * 1000 + 2000))
  const { user, system } = process.cpuUsage(before)
  return {
    ...{ shown: delays.length, reports },
    toOthersFiguresMs: { median: share(delays, 0.5), p95: share(delays, 0.95), most: share(delays, 1) },
    readerBusy: Math.round((user + system) / seconds / 10_000) / 100,
    readerMemoryMb: Math.round(process.memoryUsage().heapUsed / 1e6),
  }
}
