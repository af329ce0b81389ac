import { ENTRY_SCHEMAS } from '../catalog/entry-schemas'
import { recordsOf } from '../plan/field-records'
import { EMPTY_PLAN, type Plan } from '../plan/plan'
import { faultsOf } from '../schema/faults'
import { canonical } from './canonical'
import { memberName, namesOfMember } from './keys'
import { flat, inRank, type Members, type Plain, ranked, whole } from './members'

type Listed = Iterable<readonly [id: string, thing: unknown]>

/** How a kind of thing comes apart into registers, and together again. */
interface Kind {
  /** The things of this kind by their ids, in order. */
  readonly list: (plan: Plan) => Listed
  /** @param before the registers that the thing has now, of which the ranks stay */
  readonly spread: (thing: never, before: Members) => Members
  /** The thing that registers tell of; undefined where they are not enough for one. */
  readonly gather: (members: Members, id: string) => unknown
}

/** A thing of which each member is a register, but for those that are one together. */
const joining = (
  groups: Readonly<Record<string, readonly string[]>>,
  needed: readonly string[],
): Pick<Kind, 'spread' | 'gather'> => ({
  spread: (thing: object) => {
    const grouped = Object.entries(groups).map(([name, inner]): [string, unknown] => [
      name,
      Object.fromEntries(whole(thing).filter(([each]) => inner.includes(each))),
    ])
    return new Map([...whole(thing, ['id', ...Object.values(groups).flat()]), ...grouped])
  },
  gather: (members, id) => {
    if (!needed.every((name) => members.get(name) !== undefined)) return undefined
    const own: Record<string, unknown> = { id, ...flat(members) }
    for (const name of Object.keys(groups)) {
      Object.assign(own, own[name])
      delete own[name]
    }
    return own
  },
})

const mapOf = (kind: 'stations' | 'lines' | 'hazards' | 'circuits') => (plan: Plan) => plan[kind] as Listed

const CIRCUIT: Pick<Kind, 'spread' | 'gather'> = {
  spread: (
    {
      lines,
      sets,
      electrodeOhms,
      ...others
    }: Plan['circuits'] extends ReadonlyMap<infer _, infer C> ? C : never,
    before,
  ) =>
    new Map([
      ...whole(others, ['id']),
      ...ranked(
        'lines',
        lines.map((id) => [id, true] as const),
        before,
      ),
      ...ranked('sets', sets, before),
      ...(electrodeOhms
        ? [
            ['electrodeOhms', true] as [string, unknown],
            ...ranked('electrodeOhms', Object.entries(electrodeOhms), before),
          ]
        : []),
    ]),
  gather: (members, id) => {
    if (members.get('name') === undefined) return undefined
    const { electrodeOhms, ...own } = flat(members)
    const rods = inRank(members, 'electrodeOhms')
    return {
      supply: null,
      ...own,
      id,
      lines: inRank(members, 'lines').map(([line]) => line),
      sets: new Map(inRank(members, 'sets')),
      ...((electrodeOhms || rods.length > 0) && { electrodeOhms: Object.fromEntries(rods) }),
    }
  },
}

/** An entry of the catalog: what no schema knows of it is one register, so that its order stays. */
function entryKind(kind: keyof typeof ENTRY_SCHEMAS): Kind {
  const known = ENTRY_SCHEMAS[kind].entries as Plain
  return {
    list: ({ catalog }) => catalog[kind].map((entry) => [entry.id, entry] as const),
    spread: (entry: Plain) => {
      const unknown = whole(entry).filter(([name]) => !Object.hasOwn(known, name))
      return new Map([
        ...whole(entry, ['id']).filter(([name]) => Object.hasOwn(known, name)),
        ...(unknown.length > 0 ? [['unknown', Object.fromEntries(unknown)] as [string, unknown]] : []),
      ])
    },
    gather: (members, id) => {
      const { unknown, ...own } = flat(members)
      const entry = { id, ...own, ...(unknown as Plain | undefined) }
      return faultsOf(ENTRY_SCHEMAS[kind], entry, '').length === 0 ? entry : undefined
    },
  }
}

/** Like things told apart by how many of them came before. */
function* byCount<T>(items: readonly T[], nameOf: (item: T) => string): Generator<readonly [string, T]> {
  const seen = new Map<string, number>()
  for (const item of items) {
    const name = nameOf(item)
    const count = (seen.get(name) ?? 0) + 1
    seen.set(name, count)
    yield [count === 1 ? name : `${name}#${count}`, item]
  }
}

const ownId = (item: unknown): string => {
  const id = (item as { id?: unknown } | null)?.id
  return typeof id === 'string' || typeof id === 'number' ? String(id) : canonical(item)
}

const one = (name: string): Pick<Kind, 'spread' | 'gather'> => ({
  spread: (thing: unknown) => new Map([[name, thing]]),
  gather: (members) => members.get(name),
})

/** Settings that are told apart member by member; every other one is a register as it is. */
const OPENED = ['allowances', 'allowances/slackPct', 'work', 'papers']
const UNKNOWN = ['file', 'plan', 'catalog'] as const

function openedUp(value: object, prefix: string): [string, unknown][] {
  return whole(value).flatMap(([name, inner]) => {
    const member = prefix === '' ? memberName(name) : `${prefix}/${memberName(name)}`
    return OPENED.includes(member)
      ? openedUp(inner as object, member)
      : [[member, inner] as [string, unknown]]
  })
}

/** All that a plan says besides its things: the plan itself stands for it. */
const PLAN: Kind = {
  list: (plan) => [['', plan]],
  spread: (plan: Plan, before) => {
    const { stations, lines, hazards, circuits, catalog, stock, field, unknown, ...settings } = plan
    return new Map([
      ...openedUp(settings, ''),
      ...UNKNOWN.flatMap((name) => ranked(`unknown-${name}`, Object.entries(unknown?.[name] ?? {}), before)),
    ])
  },
  gather: (members) => {
    const settings: Record<string, unknown> = {}
    const put = (member: string, value: unknown) => {
      const names = namesOfMember(member)
      let at = settings
      for (const name of names.slice(0, -1)) {
        at[name] ??= {}
        at = at[name] as Record<string, unknown>
      }
      at[names.at(-1)!] = value
    }
    for (const [member, value] of PLAN.spread(EMPTY_PLAN as never, new Map())) put(member, value)
    for (const [member, value] of members) if (!/^(unknown-|$)/.test(member)) put(member, value)
    const unknown = Object.fromEntries(
      UNKNOWN.flatMap((name) => {
        const kept = inRank(members, `unknown-${name}`)
        return kept.length > 0 ? [[name, Object.fromEntries(kept)]] : []
      }),
    )
    return { ...settings, ...(Object.keys(unknown).length > 0 && { unknown }) }
  },
}

/** Every kind of thing, those before that others name. */
export const KINDS: Readonly<Record<string, Kind>> = {
  plan: PLAN,
  wires: entryKind('wires'),
  sets: entryKind('sets'),
  supplies: entryKind('supplies'),
  stock: {
    list: ({ stock }) => byCount(stock, ({ wire, lengthM }) => `${wire} ${lengthM}`),
    spread: (row: object) => new Map(whole(row)),
    gather: (members) =>
      ['wire', 'lengthM', 'count'].every((name) => members.has(name)) ? flat(members) : undefined,
  },
  stations: { list: mapOf('stations'), ...joining({}, ['name', 'note', 'position']) },
  lines: {
    list: mapOf('lines'),
    ...joining({ route: ['bends', 'legs', 'endElevationsM'], way: ['return', 'electrodeOhms'] }, [
      'from',
      'to',
      'wire',
      'pairs',
      'route',
      'way',
    ]),
  },
  hazards: { list: mapOf('hazards'), ...joining({}, ['hazard', 'name', 'geometry']) },
  circuits: { list: mapOf('circuits'), ...CIRCUIT },
  field: { list: (plan) => recordsOf(plan).map((record) => [record.id, record] as const), ...one('record') },
  features: { list: ({ unknown }) => byCount(unknown?.features ?? [], ownId), ...one('feature') },
}

/** A plan of things in their order, by kind. */
export function planOfThings(things: (kind: string) => ReadonlyMap<string, unknown>): Plan {
  const list = (kind: string) => [...things(kind).values()]
  const { field: _, unknown: { features: __, ...kept } = {}, ...settings } = things('plan').get('') as Plan
  const features = list('features')
  const field = list('field')
  const unknown = { ...kept, ...(features.length > 0 && { features }) }
  return {
    ...settings,
    catalog: { wires: list('wires'), sets: list('sets'), supplies: list('supplies') },
    stock: list('stock'),
    stations: things('stations'),
    lines: things('lines'),
    hazards: things('hazards'),
    circuits: things('circuits'),
    ...(field.length > 0 && { field }),
    ...(Object.keys(unknown).length > 0 && { unknown }),
  } as unknown as Plan
}
