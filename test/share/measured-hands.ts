import { moveStation } from '../../src/plan/station-edits'
import { reportPlan } from '../../src/report/report-plan'
import { newJournal } from '../../src/share/new-journal'
import { makeKeys, passOf, tagOf } from '../../src/share/plan-keys'
import { beginningIn, Room } from '../../src/share/room'
import { makeHand } from '../../src/share/sealed'
import { bigPlan } from '../bench/big-plan'

interface Line {
  readonly close: () => Promise<void>
}
interface Stream {
  readonly publish: (subject: string, bytes: Uint8Array, options: object) => Promise<unknown>
  readonly consumers: {
    get(
      stream: string,
      options: object,
    ): Promise<{ consume(): Promise<AsyncIterable<{ data: Uint8Array; subject: string }>> }>
  }
}
interface Ways {
  readonly hands: number
  readonly seconds: number
  readonly stations: number
  readonly announce: (plan: object) => Promise<unknown>
  readonly line: (user: string, pass: string, tag: string) => Promise<Line>
  readonly jetstream: (line: Line) => Stream
}

const share = (sorted: readonly number[], part: number): number =>
  Math.round(sorted[Math.floor((sorted.length - 1) * part)]! * 10) / 10

/** How long after an edit another screen's figures stand, and what an edit weighs. Figures of one machine that does all of it. */
export async function measuredHands({ hands, seconds, stations, announce, line, jetstream }: Ways) {
  const keys = makeKeys()
  const tag = tagOf(keys)
  const { read, write } = passOf(keys)
  await announce({ tag, read, write })
  const plan = bigPlan({ stations, perCircuit: 10, bends: 20 })
  const journal = newJournal(plan)
  const first = new Room(keys, journal, makeHand(keys.write!))
  const writing = await line(`${tag}.w`, write!, tag)
  const stream = jetstream(writing)
  const beginning = first.beginning(0)
  await stream.publish(`plan.${tag}.begin`, beginning, { msgID: 'begin' })
  const rooms = Array.from(
    { length: hands },
    () => new Room(keys, beginningIn(beginning, keys)!.journal, makeHand(keys.write!)),
  )

  const reading = await line(`${tag}.r`, read, tag)
  const consumer = await jetstream(reading).consumers.get(`PLAN_${tag}`, {
    deliver_policy: 'all',
    ack_policy: 'none',
  })
  const reader = new Room(keys, beginningIn(beginning, keys)!.journal, null)
  const sentAt = new Map<string, number>()
  const delays: number[] = []
  let waiting: string[] = []
  let isReckoning = false
  const reckon = () => {
    if (isReckoning || waiting.length === 0) return
    isReckoning = true
    setTimeout(() => {
      const shown = waiting
      waiting = []
      reportPlan(reader.view.plan)
      const now = performance.now()
      for (const id of shown) delays.push(now - sentAt.get(id)!)
      isReckoning = false
      reckon()
    }, 0)
  }
  void (async () => {
    for await (const message of await consumer.consume()) {
      if (!message.subject.endsWith('edits')) continue
      const { added } = reader.receive(message.data)
      for (const { hand, number } of added) waiting.push(`${hand}:${number}`)
      reckon()
    }
  })()
  reportPlan(plan)
  const bytes: number[] = []
  const acks: number[] = []
  const ids = [...plan.stations.keys()]
  const ends = performance.now() + seconds * 1000
  await Promise.all(
    rooms.map(async (room, at) => {
      let own = plan
      await new Promise((done) => setTimeout(done, (at * 500) / hands))
      for (let k = 0; performance.now() < ends; k++) {
        const begun = performance.now()
        const id = ids[(at * 37 + k * 101) % ids.length]!
        const [lon, lat] = own.stations.get(id)!.position
        const next = moveStation(own, id, [lon + 1e-5, lat])
        const written = room.write(own, next, Date.now())!
        own = next
        const [edit] = written.edits
        sentAt.set(`${edit!.hand}:${edit!.number}`, begun)
        bytes.push(written.bytes.length)
        const asked = performance.now()
        await stream.publish(`plan.${tag}.edits`, written.bytes, { msgID: `${edit!.hand}:${edit!.number}` })
        acks.push(performance.now() - asked)
        await new Promise((done) => setTimeout(done, Math.max(0, 500 - (performance.now() - begun))))
      }
    }),
  )
  await new Promise((done) => setTimeout(done, 3000))
  await Promise.all([writing.close(), reading.close()])
  const sorted = delays.toSorted((a, b) => a - b)
  const acked = acks.toSorted((a, b) => a - b)
  return {
    hands,
    stations,
    edits: bytes.length,
    shown: delays.length,
    toOthersFiguresMs: { median: share(sorted, 0.5), p95: share(sorted, 0.95), most: share(sorted, 1) },
    toDiskMs: { median: share(acked, 0.5), p95: share(acked, 0.95) },
    bytesAnEdit: Math.round(bytes.reduce((sum, each) => sum + each, 0) / bytes.length),
    beginningKb: Math.round(beginning.length / 1024),
    readerMemoryMb: Math.round(process.memoryUsage().heapUsed / 1e6),
  }
}
