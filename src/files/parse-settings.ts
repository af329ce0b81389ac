import type { CatalogEntries } from '../catalog/catalog'
import { ENTRY_SCHEMAS } from '../catalog/entry-schemas'
import { asFileHolds } from '../plan/as-file-holds'
import { LIMITS, SLACK_LIMITS } from '../plan/limits'
import {
  type Allowances,
  type Coil,
  DEFAULT_COIL,
  EMPTY_PLAN,
  LAYS,
  type PaperWishes,
  type Plan,
  type Stock,
} from '../plan/plan'
import { type Check, held, listOf, members, number, oneOf, text } from '../plan/shape'
import { WORK, WORK_FIELDS, type Work } from '../plan/work'
import type { Problem } from '../problem'
import { partOf } from '../schema/parts'
import { isObject, type Members, type Schema } from '../schema/schema'
import { exactEntries, plainName } from './exact-members'
import { type KnownIds, reference, repeatedIds } from './known-ids'
import { restOf } from './unknown-members'

const ALLOWANCES_SHAPE = members(
  'The member "allowances"',
  {},
  {
    slackPct: members(
      'The member "slackPct"',
      {},
      Object.fromEntries(LAYS.map((lay) => [lay, number(SLACK_LIMITS[lay])])),
    ),
    sagPct: number(LIMITS.sagPct),
    tailM: number(LIMITS.tailM),
    spliceWasteM: number(LIMITS.spliceWasteM),
    reservePct: number(LIMITS.reservePct),
    spliceOhms: number(LIMITS.spliceOhms),
    spliceMicroS: number(LIMITS.spliceMicroS),
    coil: members(
      'The member "coil"',
      {},
      { voiceDb: number(LIMITS.coilVoiceDb), ringDb: number(LIMITS.coilRingDb) },
    ),
  },
)

type EntryKind = keyof CatalogEntries

/** What a file may leave unsaid of an entry. */
const UNSAID: Readonly<Record<EntryKind, Members>> = { wires: { spoolsM: [] }, sets: {}, supplies: {} }

/** An entry with what the file leaves unsaid. */
function said(kind: EntryKind, value: unknown): unknown {
  if (!isObject(value)) return value
  const { id } = value
  const name = typeof id === 'string' ? id : ''
  // A board sends no direct current, and need not say so.
  const noCurrent = value.kind === 'board' ? { volts: 0, ohms: 0 } : {}
  const unsaid: Members = { name, source: 'not stated', ...noCurrent, ...UNSAID[kind] }
  const missing = Object.keys(unsaid).filter((each) => value[each] === undefined)
  return { ...value, ...Object.fromEntries(missing.map((each) => [each, unsaid[each]])) }
}

const entryList = (what: string, kind: EntryKind): Check => {
  const entry = held(ENTRY_SCHEMAS[kind])
  return listOf(what, (value, at, faults) => entry(said(kind, value), at, faults))
}

const ENTRY_LISTS: Readonly<Record<EntryKind, Check>> = {
  wires: entryList('The list of wires', 'wires'),
  sets: entryList('The list of sets', 'sets'),
  supplies: entryList('The list of supplies', 'supplies'),
}

const WORK_SHAPE = members(
  'The member "work"',
  {},
  Object.fromEntries(WORK_FIELDS.map((field) => [field, number(WORK[field])])),
)

const PAPERS_SHAPE = members(
  'The member "papers"',
  {},
  {
    revision: text('The revision'),
    size: text('The size of the sheets'),
    kinds: listOf('The list of papers', text('The paper')),
  },
)

const settingsShape = (known: KnownIds): Check =>
  members(
    'The plan',
    {},
    {
      title: text('The title'),
      note: text('The note'),
      weather: oneOf('The weather', ['dry', 'wet']),
      wireTempC: number(LIMITS.wireTempC),
      allowances: ALLOWANCES_SHAPE,
      catalog: members('The catalog', {}, ENTRY_LISTS),
      stock: listOf(
        'The stock',
        members('The entry', {
          wire: reference('The wire', 'wire', known.wires),
          lengthM: number(LIMITS.stockLengthM),
          count: number(LIMITS.stockCount),
        }),
      ),
      work: WORK_SHAPE,
      papers: PAPERS_SHAPE,
    },
  )

type Settings = Pick<
  Plan,
  'title' | 'note' | 'weather' | 'wireTempC' | 'allowances' | 'catalog' | 'stock' | 'work' | 'papers'
>

/** All of the member `plan` but its circuits, with the defaults where it is silent. */
export function parseSettings(value: Members, known: KnownIds, faults: Problem[]): Settings {
  const before = faults.length
  settingsShape(known)(value, 'plan', faults)
  repeatedEntries(value.catalog, faults)
  if (faults.length > before) return EMPTY_PLAN
  const file = value as Partial<Settings>
  const { title, note, weather, wireTempC } = { ...EMPTY_PLAN, ...file }
  return {
    title,
    note,
    weather,
    wireTempC,
    allowances: toAllowances(file.allowances ?? {}),
    catalog: {
      wires: entriesOf('wires', file.catalog?.wires),
      sets: entriesOf('sets', file.catalog?.sets),
      supplies: entriesOf('supplies', file.catalog?.supplies),
    },
    stock: (file.stock ?? []).map(toStock),
    ...toWork(file.work ?? {}),
    ...toPapers(file.papers ?? {}),
  }
}

function repeatedEntries(catalog: unknown, faults: Problem[]): void {
  for (const name of Object.keys(ENTRY_LISTS)) {
    const list = isObject(catalog) ? catalog[name] : undefined
    if (Array.isArray(list)) repeatedIds(list, `plan.catalog.${name}`, faults)
  }
}

/** An entry whose unknown members are as they are to be kept. */
function exactEntry(schema: Schema, value: unknown): unknown {
  const { entries } = partOf(schema)
  if (!entries || !isObject(value)) return value
  return Object.fromEntries(
    exactEntries(value).map(([name, inner]) => {
      const known = entries[plainName(name)]
      return known ? [name, exactEntry(known, value[name])] : [name, inner]
    }),
  )
}

/** Entries as they are, unknown members and all. */
const entriesOf = <T extends object>(kind: EntryKind, entries: readonly T[] = []): readonly T[] =>
  entries.map((entry) => asFileHolds(said(kind, exactEntry(ENTRY_SCHEMAS[kind], entry)) as T))

const ALLOWANCE_MEMBERS = [
  ...['slackPct', 'sagPct', 'tailM', 'spliceWasteM', 'reservePct', 'spliceOhms', 'spliceMicroS', 'coil'],
]

function toAllowances(file: Partial<Allowances>): Allowances {
  const { allowances } = EMPTY_PLAN
  const { sagPct, tailM, spliceWasteM, reservePct, spliceOhms, spliceMicroS } = { ...allowances, ...file }
  const slackPct = { ...allowances.slackPct }
  for (const lay of LAYS) slackPct[lay] = file.slackPct?.[lay] ?? slackPct[lay]
  const slackRest = restOf(file.slackPct ?? {}, LAYS)
  const others = restOf(file, ALLOWANCE_MEMBERS)
  const rest = slackRest ? { ...others, slackPct: slackRest } : others
  return {
    slackPct,
    sagPct,
    tailM,
    spliceWasteM,
    reservePct,
    ...(spliceOhms && { spliceOhms }),
    ...(spliceMicroS && { spliceMicroS }),
    ...(file.coil && { coil: toCoil(file.coil) }),
    ...(rest && { rest }),
  }
}

function toCoil(file: Partial<Coil>): Coil {
  const { voiceDb, ringDb } = { ...DEFAULT_COIL, ...file }
  const rest = restOf(file, ['voiceDb', 'ringDb'])
  return { voiceDb, ringDb, ...(rest && { rest }) }
}

function toStock(file: Stock): Stock {
  const { wire, lengthM, count } = file
  const rest = restOf(file, ['wire', 'lengthM', 'count'])
  return { wire, lengthM, count, ...(rest && { rest }) }
}

/** `{ work }` with the figures that differ from the usual ones, or nothing where none does. */
function toWork(file: Work): Pick<Plan, 'work'> {
  const figures = WORK_FIELDS.flatMap((field) => {
    const figure = file[field]
    return figure === undefined || figure === WORK[field].usual ? [] : [[field, figure] as const]
  })
  const rest = restOf(file, WORK_FIELDS)
  const work: Work = { ...Object.fromEntries(figures), ...(rest && { rest }) }
  return Object.keys(work).length > 0 ? { work } : {}
}

const PAPER_MEMBERS = ['revision', 'size', 'kinds'] as const

/** `{ papers }` with what is said of them, or nothing where nothing is. */
function toPapers(file: PaperWishes): Pick<Plan, 'papers'> {
  const { revision, size, kinds } = file
  const rest = restOf(file, PAPER_MEMBERS)
  const papers: PaperWishes = {
    ...(revision !== undefined && { revision }),
    ...(size !== undefined && { size }),
    ...(kinds !== undefined && { kinds }),
    ...(rest && { rest }),
  }
  return Object.keys(papers).length > 0 ? { papers } : {}
}
