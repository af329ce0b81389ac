/** A plan kept in this browser, as its record is written. */
export interface DraftRecord {
  readonly key: string
  /** How often this draft has been written. */
  readonly revision: number
  /** The plan that this is a state of, through all windows and reloads: what its versions are kept under. */
  readonly doc: string
  readonly title: string
  readonly savedAt: Date
  /** Rises with every save, also where the clock has been set back. */
  readonly order: number
  /** The draft that it grew out of, where that could not be dropped before the page went away. */
  readonly base?: DraftState
  readonly removedAt?: Date
  /** What was begun to be drawn on it, as `plan/under-way.ts` has it. */
  readonly underWay?: unknown
  /** The plan file's text: what an older or a newer program can read too. */
  readonly text: string
}

/** A version as a list shows it. */
export type VersionEntry = Pick<VersionRecord, 'id' | 'name' | 'keptAt'>

/** One state of one draft. */
export interface DraftState {
  readonly key: string
  readonly revision: number
}

/** A state of a plan that was kept under a name, to be brought back. */
export interface VersionRecord {
  readonly id: string
  /** The plan that it is a state of. */
  readonly doc: string
  readonly name: string
  readonly keptAt: Date
  readonly order: number
  readonly text: string
}

/** A draft as a list shows it. */
export interface DraftEntry extends DraftState {
  readonly title: string
  /** Undefined where the record does not say. */
  readonly savedAt: Date | undefined
  readonly order: number
  readonly isRemoved: boolean
  /** Why no plan can be made of it; empty where one can, as far as the record tells. */
  readonly fault: '' | 'no text' | 'no plan'
}

/**
 * What a record says, whatever has become of it: a member that is not what it should be counts as absent. Undefined where there
 * is not even a record.
 */
export function readRecord(
  value: unknown,
): (DraftEntry & Pick<DraftRecord, 'doc' | 'base' | 'text' | 'underWay'>) | undefined {
  if (typeof value !== 'object' || value === null || !('key' in value)) return undefined
  const { key, revision, doc, title, savedAt, order, base, removedAt, text, underWay } = value as Partial<
    Record<keyof DraftRecord, unknown>
  >
  const when = isDate(savedAt) ? savedAt : undefined
  const origin = stateOf(base)
  return {
    key: key as string,
    revision: countOf(revision),
    doc: typeof doc === 'string' ? doc : String(key),
    title: typeof title === 'string' ? title : '',
    savedAt: when,
    order: typeof order === 'number' && Number.isFinite(order) ? order : (when?.getTime() ?? 0),
    isRemoved: removedAt !== undefined,
    fault: typeof text !== 'string' ? 'no text' : isJson(text) ? '' : 'no plan',
    text: typeof text === 'string' ? text : '',
    underWay,
    ...(origin && { base: origin }),
  }
}

const isDate = (value: unknown): value is Date => value instanceof Date && !Number.isNaN(value.getTime())

const countOf = (value: unknown): number => (Number.isSafeInteger(value) ? (value as number) : 0)

function stateOf(value: unknown): DraftState | undefined {
  if (typeof value !== 'object' || value === null) return undefined
  const { key, revision } = value as Partial<DraftState>
  return typeof key === 'string' ? { key, revision: countOf(revision) } : undefined
}

/** Cheaper than reading the plan, and enough to tell a torn text in a list. */
function isJson(text: string): boolean {
  try {
    JSON.parse(text)
    return true
  } catch {
    return false
  }
}
