import { LOADINGS, type LoadingDistrict } from '../catalog/overhead-loading'
import { pathM } from '../geo/leg-length'
import { HAZARDS } from '../hazard/kinds'
import { isolated } from '../isolated'
import { placeOf } from '../journal/keys'
import type { LineId, StationId } from '../plan/id'
import type { Hazard, HazardKind, Lay, Line, Plan } from '../plan/plan'
import type { StandingRecord } from '../plan/standing-records'
import { quantityOf, spacedName } from './figure-units'
import { LAY_WORDS } from './plan-words'
import { recordWords } from './record-words'
import type { Tongue } from './tongue'
import { formatCount } from './units'

const LONGEST = 80
const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)
const shortened = (text: string): string =>
  isolated(text.length > LONGEST ? `${text.slice(0, LONGEST - 1)}…` : text)

/** A value of a property, short enough to stand beside another one, in the units of whoever reads it. */
export function propertyValueWords(plan: Plan, key: string, value: unknown, say: Tongue): string {
  const { kind = '', id = '', member = '' } = placeOf(key) ?? {}
  if (value === undefined) return 'taken out'
  if (value === '') return 'nothing'
  if (member === '') return 'kept'
  if (member === 'record') return shortened(recordValueWords(value, say))
  if (member === 'feature' || member.startsWith('unknown')) return shortened(JSON.stringify(value))
  if (kind === 'circuits' && member.startsWith('lines/')) return 'in it'
  return plainWords(plan, kind, id, member, value, say)
}

function plainWords(
  plan: Plan,
  kind: string,
  id: string,
  member: string,
  value: unknown,
  say: Tongue,
): string {
  switch (`${kind}/${member.split('/', 1)[0]}`) {
    case 'stations/position':
      return placeWords(value as readonly [number, number])
    case 'lines/from':
    case 'lines/to':
    case 'lines/wire':
    case 'stock/wire':
    case 'circuits/sets':
      return say.name(String(value))
    case 'lines/worn':
      return value === true ? 'old or nicked' : 'sound'
    case 'lines/route':
      return routeWords(plan, id as LineId, value as Pick<Line, 'bends' | 'legs'>, say)
    case 'lines/way':
      return wayWords(value as Pick<Line, 'return' | 'electrodeOhms'>, say)
    case 'hazards/hazard':
      return HAZARDS[value as HazardKind]?.one ?? shortened(String(value))
    case 'hazards/geometry':
      return courseWords(value as Hazard['geometry'], say)
    case 'circuits/supply':
      return supplyWords(value, say)
    case 'circuits/electrodeOhms':
      return value === true ? 'there' : say.quantity(value as number, 'ohm')
    case 'circuits/over':
      return { pair: 'a pair of its own', phantom: 'two pairs', simplex: 'one pair and the earth' }[
        value as 'pair'
      ]
    case 'plan/loadingDistrict':
      return LOADINGS[value as LoadingDistrict] ? `district “${String(value)}”` : shortened(String(value))
    case 'stock/count':
      return formatCount(value as number, 'spool')
    default:
      return anyWords(member.split('/').findLast(quantityOf) ?? member, value, say)
  }
}

/** Any other value, by the last word of its name, or of the name of what it is in. */
function anyWords(name: string, value: unknown, say: Tongue): string {
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  if (typeof value === 'number') {
    const quantity = quantityOf(name)
    return quantity ? say.quantity(value, quantity) : String(Number(value.toFixed(6)))
  }
  if (Array.isArray(value)) return shortened(value.map((each) => anyWords(name, each, say)).join(', '))
  if (!isObject(value)) return shortened(String(value))
  const parts = Object.entries(value).map(([inner, each]) =>
    `${spacedName(inner)} ${anyWords(quantityOf(inner) ? inner : name, each, say)}`.trim(),
  )
  return shortened(parts.join(', '))
}

const placeWords = ([lonDeg, latDeg]: readonly [number, number]): string =>
  `${Math.abs(latDeg).toFixed(5)}° ${latDeg < 0 ? 'S' : 'N'} ${Math.abs(lonDeg).toFixed(5)}° ${lonDeg < 0 ? 'W' : 'E'}`

function routeWords(
  plan: Plan,
  id: LineId,
  { bends, legs }: Pick<Line, 'bends' | 'legs'>,
  say: Tongue,
): string {
  const line = plan.lines.get(id)
  const [from, to] = [line?.from, line?.to].map((end) => plan.stations.get(end as StationId)?.position)
  const path = [...(from ? [from] : []), ...bends, ...(to ? [to] : [])]
  const lays = [...new Set(legs.map(({ lay }) => LAY_WORDS[lay as Lay] ?? lay))].join(', ')
  return `${say.run(pathM(path))} on the map, ${formatCount(bends.length, 'bend')}, ${lays}`
}

function wayWords({ return: way, electrodeOhms }: Pick<Line, 'return' | 'electrodeOhms'>, say: Tongue) {
  if (way !== 'earth') return 'second wire of the pair'
  const [from, to] = (electrodeOhms ?? []).map((each) => say.quantity(each, 'ohm'))
  return from && to ? `through the earth, electrodes ${from} and ${to}` : 'through the earth'
}

function courseWords({ type, coordinates }: Hazard['geometry'], say: Tongue): string {
  const path = (type === 'Polygon' ? (coordinates[0] ?? []) : coordinates) as readonly [number, number][]
  return type === 'Polygon'
    ? `${formatCount(path.length - 1, 'corner')}, ${say.run(pathM(path))} round`
    : `${formatCount(path.length, 'point')}, ${say.run(pathM(path))} long`
}

function supplyWords(value: unknown, say: Tongue): string {
  if (!isObject(value)) return 'none: every telephone feeds itself'
  return `${say.name(String(value.type))} at ${say.name(String(value.at))}`
}

const recordValueWords = (value: unknown, say: Tongue): string =>
  isObject(value) && value.kind === 'undone'
    ? 'An earlier record is undone'
    : recordWords(value as unknown as StandingRecord, say)
