import { isolated } from '../isolated'
import { namesOfMember, placeOf } from '../journal/keys'
import type { CircuitId, LineId } from '../plan/id'
import { circuitName, lineName, type Plan, stationName } from '../plan/plan'
import { formatCount } from './units'

/** What a property of each kind of thing is called; one that is not here goes by its own name. */
const MEMBERS: Readonly<Record<string, string>> = {
  name: 'name',
  note: 'note',
  position: 'place',
  wire: 'wire',
  pairs: 'pairs',
  route: 'way',
  way: 'return',
  from: 'start',
  to: 'end',
  worn: 'wear',
  hazard: 'kind',
  geometry: 'course',
  supply: 'supply',
  over: 'pairs or riding',
  record: 'record',
  title: 'title',
  weather: 'weather',
  wireTempC: 'wire temperature',
}

/** The thing that a key of the journal belongs to, by its name. */
export function thingWords(plan: Plan, key: string): string {
  const { kind = '', id = '' } = placeOf(key) ?? {}
  switch (kind) {
    case 'stations':
      return stationName(plan, id)
    case 'lines': {
      const line = plan.lines.get(id as LineId)
      return line ? lineName(plan, line) : 'a line'
    }
    case 'circuits': {
      const circuit = plan.circuits.get(id as CircuitId)
      return circuit ? circuitName(plan, circuit) : 'a circuit'
    }
    case 'hazards':
      return isolated(plan.hazards.get(id as never)?.name || 'something in the way')
    case 'plan':
      return 'the plan'
    case 'field':
      return 'a record'
    default:
      return isolated(id)
  }
}

/** The property that a key of the journal names: `name of Ford`. */
export function propertyWords(plan: Plan, key: string): string {
  const member = placeOf(key)?.member ?? ''
  const thing = thingWords(plan, key)
  if (member === '') return thing
  const [first = '', second] = namesOfMember(member)
  if (second === undefined) return `${MEMBERS[first] ?? first} of ${thing}`
  if (first === 'sets') return `telephone at ${stationName(plan, second)} in ${thing}`
  if (first === 'lines') return `${thingWords(plan, `lines/${second}/`)} in ${thing}`
  return `${first} ${second} of ${thing}`
}

const LONGEST = 80

/** A value of a property, short enough to stand beside another one. */
export function propertyValueWords(plan: Plan, key: string, value: unknown): string {
  const member = placeOf(key)?.member ?? ''
  if (value === undefined) return 'taken out'
  if (value === true) return 'yes'
  if (value === '') return 'nothing'
  if (member === 'from' || member === 'to') return stationName(plan, String(value))
  if (member === 'position' && Array.isArray(value))
    return `${Number(value[1]).toFixed(5)}, ${Number(value[0]).toFixed(5)}`
  if (member === 'route') {
    const { bends, legs } = value as {
      readonly bends: readonly unknown[]
      readonly legs: readonly { lay: string }[]
    }
    const lays = [...new Set(legs.map(({ lay }) => lay))].join(', ')
    return `${formatCount(bends.length, 'bend')}, ${lays}`
  }
  const text = typeof value === 'object' ? JSON.stringify(value) : String(value)
  return isolated(text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text)
}
