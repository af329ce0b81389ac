import { type DBSchema, openDB } from 'idb'
import { takeJournalOut, withJournal } from '../files/carried-journal'
import { formatPlan } from '../files/format-plan'
import { HEADS } from '../files/plan-fingerprint'
import type { Journal } from '../journal/journal'
import { type JournalState, stateOf } from '../journal/journal-state'
import type { Plan } from '../plan/plan'
import { journalIn } from './journal-in'
import { newJournal } from './new-journal'

/** The journal of a plan as this browser keeps it: a plan, and the state that made it. What was changed since follows from the plan on the table. */
interface KeptJournal {
  readonly doc: string
  readonly hand: string
  readonly plan: string
  readonly state: JournalState
}
interface Schema extends DBSchema {
  journals: { key: string; value: KeptJournal }
}

/** Which plan is on the table. */
interface Table {
  readonly settled: { peek(): Plan }
  readonly open: (plan: Plan) => void
  /** Where what came in waits for the person. */
  readonly received: { value: { readonly plan: Plan } | null }
  readonly notice: { value: string }
}

export type OwnJournal = ReturnType<typeof ownJournal>

/**
 * The journal of a plan that nobody shares. It begins when the plan first goes out as a file, a link or codes, and is written on whenever it is
 * asked for: what a person changes alone costs nothing meanwhile.
 *
 * @param docOf a name for the plan on the table, by which it is found again
 */
export function ownJournal(table: Table, name: string, docOf: () => string) {
  /** Where the browser keeps nothing it lasts as long as the page. */
  const here = new Map<string, KeptJournal>()
  let opening: ReturnType<typeof openDB<Schema>> | undefined
  const db = () => {
    opening ??= openDB<Schema>(name, 1, {
      upgrade: (fresh) => void fresh.createObjectStore('journals', { keyPath: 'doc' }),
    })
    return opening.catch(() => null)
  }
  const put = async (kept: KeptJournal) => {
    here.set(kept.doc, kept)
    await (await db())?.put('journals', kept).catch(() => undefined)
  }
  const get = async (doc: string) =>
    (await (await db())?.get('journals', doc).catch(() => undefined)) ?? here.get(doc)

  /** Keeps a journal that was written on elsewhere: it holds all that is on the table. */
  const keep = async (journal: Journal, doc = docOf(), hand = newHand()): Promise<void> => {
    const before = await get(doc)
    await put({
      doc,
      hand: before?.hand ?? hand,
      plan: formatPlan(journal.mended().plan),
      state: stateOf(journal),
    })
  }

  /** The journal of the plan on the table with all that was changed since; null where none has been begun, and none is to be. */
  const upToNow = async (mayBegin: boolean): Promise<Journal | null> => {
    const [doc, now] = [docOf(), table.settled.peek()]
    const kept = await get(doc)
    const begun = kept ? journalIn(kept) : null
    if (begun) {
      const was = begun.mended().plan
      if (formatPlan(was) === formatPlan(now)) return begun
      begun.write(kept!.hand, was, now, Date.now())
      if (formatPlan(begun.mended().plan) === formatPlan(now)) {
        await keep(begun, doc)
        return begun
      }
    }
    if (!mayBegin) return null
    const fresh = newJournal(now)
    await keep(fresh, doc)
    return fresh
  }

  /** What a file has just brought of a plan that is shared elsewhere. */
  let brought: Journal | null = null

  return {
    upToNow,
    /** The journal of the file that was opened last, once: whoever goes on sharing its plan takes in what it has. */
    takeBrought: (): Journal | null => {
      const last = brought
      brought = null
      return last
    },
    keep: (journal: Journal) => keep(journal),
    filePlan: async (): Promise<Plan> => {
      const journal = await upToNow(true)
      return withJournal(journal!.mended().plan, journal!)
    },
    /** The plan with what lets another tell how it stands to theirs: the whole journal where there is room, else how far each hand had come. */
    carried: async (plan: Plan, hasRoom: (plan: Plan) => boolean): Promise<Plan> => {
      const journal = await upToNow(true)
      const whole = withJournal(plan, journal!)
      if (hasRoom(whole)) return whole
      const heads = { id: journal!.id, seen: Object.fromEntries(journal!.seen) }
      return { ...plan, unknown: { ...plan.unknown, plan: { ...plan.unknown?.plan, [HEADS]: heads } } }
    },
    /** Takes in a plan that a file has brought along with its journal: beside the one on the table where it is of that. False where it brought none. */
    takeFile: async (read: Plan): Promise<boolean> => {
      const { plan, journal, said } = takeJournalOut(read)
      if (said) table.notice.value = said
      if (!journal) return false
      const own = await get(docOf())
      if (own?.state.id === journal.id) table.received.value = { plan: read }
      else {
        brought = journal
        table.open(plan)
        await keep(journal)
      }
      return true
    },
  }
}

const newHand = (): string =>
  `f${crypto.getRandomValues(new Uint32Array(2)).reduce((text, each) => text + each.toString(36), '')}`
