import { formatPlan } from '../../src/files/format-plan'
import type { StationId } from '../../src/plan/id'
import type { Plan } from '../../src/plan/plan'
import { noteStation } from '../../src/plan/station-edits'
import { joinByFragment, startSharing } from '../../src/share/share'
import { createStore } from '../../src/state/store'
import { bigPlan } from '../bench/big-plan'

interface Told {
  readonly port: number
  /** The invitation; absent for whoever shares the plan first. */
  readonly fragment?: string
}

/** What a trial asks of a hand. */
export type Ask =
  | {
      readonly do: 'edit'
      readonly from: number
      readonly count: number
      readonly everyMs: number
      readonly letters?: number
      /** Only so many stations are edited, again and again. */
      readonly among?: number
    }
  | { readonly do: 'state' }
  | { readonly do: 'change keys' }
  | { readonly do: 'end' }

export interface HandState {
  readonly standing: string
  readonly waiting: number
  readonly said: readonly string[]
  readonly fragment: string
  readonly text: string
  /** Marks of the edits that this hand has made so far. */
  readonly made: readonly string[]
  /** Every mark that is in its plan. */
  readonly marks: readonly string[]
}

const STATIONS = 100
const MARK = /m\d+-\d+/g

/** A hand that does what the page does, in a process that can be killed: it shares or joins a plan over the page's own ways, and leaves a mark with each edit. */
export async function tryHand({ port, fragment, say }: Told & { readonly say: (word: object) => void }) {
  Object.assign(globalThis, { location: new URL(`http://127.0.0.1:${port}/`) })
  const store = createStore(bigPlan({ stations: STATIONS, perCircuit: 10, bends: 0 }))
  const why = fragment ? await joinByFragment(store, fragment) : await startSharing(store)
  if (why) return { why }
  const made: string[] = []
  const state = (): HandState => {
    const sharing = store.sharing.peek()!
    return {
      standing: sharing.box!.standing.peek(),
      waiting: sharing.box!.waiting.peek(),
      said: [...sharing.said.peek(), store.notice.peek()],
      fragment: new URL(sharing.box!.invitation(true)).hash,
      text: formatPlan(store.plan.peek()),
      made,
      marks: marksIn(store.plan.peek()),
    }
  }
  const edit = async ({
    from,
    count,
    everyMs,
    letters = 0,
    among = STATIONS,
  }: Extract<Ask, { do: 'edit' }>) => {
    for (let at = from; at < from + count; at++) {
      const mark = `m${process.pid}-${at}`
      const id = `s${at % among}` as StationId
      store.edit((plan) => {
        const filler = Array.from({ length: letters }, () => Math.random().toString(36)[2]).join('')
        const before = plan.stations.get(id)!.note.match(MARK) ?? []
        return noteStation(plan, id, [...before, mark, filler].join(' ').trim())
      })
      made.push(mark)
      await new Promise((done) => setTimeout(done, everyMs))
    }
  }
  say({ ready: state() })
  return await new Promise<object>((done) => {
    process.on('message', async (ask: Ask) => {
      if (ask.do === 'end') return done(state())
      if (ask.do === 'edit') await edit(ask)
      if (ask.do === 'change keys') await store.sharing.peek()!.box!.changeKeys()
      say({ state: state() })
    })
  })
}

const marksIn = (plan: Plan): readonly string[] =>
  [...plan.stations.values()].flatMap(({ note }) => note.match(MARK) ?? [])
