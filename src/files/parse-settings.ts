import type { CatalogEntries } from '../catalog/catalog'
import { asFileHolds, SET_SHAPE, SUPPLY_SHAPE, WIRE_SHAPE } from '../plan/entry-shapes'
import { LIMITS, SLACK_LIMITS } from '../plan/limits'
import { type Allowances, EMPTY_PLAN, LAYS, type Plan, type Stock } from '../plan/plan'
import { type Check, isObject, listOf, type Members, members, number, oneOf, text } from '../plan/shape'
import { WORK, WORK_FIELDS, type Work } from '../plan/work'
import type { Problem } from '../problem'
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
  },
)

const ENTRY_LISTS: Readonly<Record<keyof CatalogEntries, Check>> = {
  wires: listOf('The list of wires', WIRE_SHAPE),
  sets: listOf('The list of sets', SET_SHAPE),
  supplies: listOf('The list of supplies', SUPPLY_SHAPE),
}

const WORK_SHAPE = members(
  'The member "work"',
  {},
  Object.fromEntries(WORK_FIELDS.map((field) => [field, number(WORK[field])])),
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
    },
  )

type Settings = Pick<
  Plan,
  'title' | 'note' | 'weather' | 'wireTempC' | 'allowances' | 'catalog' | 'stock' | 'work'
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
    allowances: toAllowances({ ...file.allowances }),
    catalog: {
      wires: (file.catalog?.wires ?? []).map(named),
      sets: (file.catalog?.sets ?? []).map(named),
      supplies: (file.catalog?.supplies ?? []).map(named),
    },
    stock: (file.stock ?? []).map(toStock),
    ...toWork({ ...file.work }),
  }
}

function repeatedEntries(catalog: unknown, faults: Problem[]): void {
  for (const name of Object.keys(ENTRY_LISTS)) {
    const list = isObject(catalog) ? catalog[name] : undefined
    if (Array.isArray(list)) repeatedIds(list, `plan.catalog.${name}`, faults)
  }
}

/** An entry as it is, unknown members and all. */
const named = <T extends { readonly id: string; readonly name?: string; readonly source?: string }>(
  entry: T,
): T => asFileHolds({ ...entry, name: entry.name ?? entry.id, source: entry.source ?? 'not stated' })

function toAllowances(file: Partial<Allowances> & Members): Allowances {
  const { allowances } = EMPTY_PLAN
  const { sagPct, tailM, spliceWasteM, reservePct } = { ...allowances, ...file }
  const slack: Members = { ...file.slackPct }
  const slackPct = { ...allowances.slackPct }
  for (const lay of LAYS) slackPct[lay] = file.slackPct?.[lay] ?? slackPct[lay]
  const slackRest = restOf(slack, LAYS)
  const others = restOf(file, ['slackPct', 'sagPct', 'tailM', 'spliceWasteM', 'reservePct'])
  const rest = slackRest ? { ...others, slackPct: slackRest } : others
  return { slackPct, sagPct, tailM, spliceWasteM, reservePct, ...(rest && { rest }) }
}

function toStock(file: Stock): Stock {
  const { wire, lengthM, count } = file
  const rest = restOf({ ...file }, ['wire', 'lengthM', 'count'])
  return { wire, lengthM, count, ...(rest && { rest }) }
}

/** `{ work }` with the figures that differ from the usual ones, or nothing where none does. */
function toWork(file: Work & Members): Pick<Plan, 'work'> {
  const figures = WORK_FIELDS.flatMap((field) => {
    const figure = file[field]
    return figure === undefined || figure === WORK[field].usual ? [] : [[field, figure] as const]
  })
  const rest = restOf(file, WORK_FIELDS)
  const work: Work = { ...Object.fromEntries(figures), ...(rest && { rest }) }
  return Object.keys(work).length > 0 ? { work } : {}
}
