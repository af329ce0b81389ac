import { HAZARDS } from '../hazard/kinds'
import { isolated } from '../isolated'
import { namesOfMember, placeOf } from '../journal/keys'
import type { CircuitId, HazardId, LineId } from '../plan/id'
import { circuitName, lineName, type Plan, stationName } from '../plan/plan'
import { WORK, type WorkField } from '../plan/work'
import { figureName } from './figure-names'
import { spacedName } from './figure-units'
import { nameIn } from './tongue'

/** What a property of a thing is called; a figure of the catalog has a name of its own. */
const OF_THINGS: Readonly<Record<string, string>> = {
  name: 'name',
  note: 'note',
  position: 'place',
  wire: 'wire',
  pairs: 'pairs',
  route: 'way',
  way: 'return',
  from: 'start',
  to: 'end',
  worn: 'state',
  hazard: 'kind',
  geometry: 'course',
  supply: 'supply',
  over: 'pairs or riding',
  electrodeOhms: 'electrodes',
  source: 'source',
  sources: 'sources',
  spread: 'spread of figures',
  lengthM: 'length',
  spoolsM: 'lengths of spools',
  kg: 'mass',
  kgPerKm: 'mass',
  breakN: 'breaking strength',
  endVolts: 'end voltage',
  ampHours: 'capacity',
  powerW: 'power that it takes',
  fedBy: 'battery behind it',
  count: 'number',
  unknown: 'data of another program',
}

/** What the plan says as a whole, by the whole name of the member. */
const OF_PLAN: Readonly<Record<string, string>> = {
  title: 'the title',
  note: 'the note on the plan',
  weather: 'the weather',
  wireTempC: 'the temperature of the wire',
  loadingDistrict: 'ice and wind on spans',
  'allowances/slackPct/surface': 'the slack on the surface',
  'allowances/slackPct/overhead': 'the slack overhead',
  'allowances/slackPct/buried': 'the slack buried',
  'allowances/slackPct/water': 'the slack under water',
  'allowances/sagPct': 'the sag of wire overhead',
  'allowances/tailM': 'the tail at each end of a line',
  'allowances/spliceWasteM': 'the wire used up by a splice',
  'allowances/reservePct': 'the reserve carried',
  'allowances/spliceOhms': 'the resistance of a splice',
  'allowances/spliceMicroS': 'the leakage of a splice',
  'allowances/coil': 'what a repeating coil takes off',
  'papers/revision': 'the revision on the papers',
  'papers/size': 'the size of the sheets',
  'papers/kinds': 'which papers are printed',
}

/** The thing that a key of the journal belongs to, by its name. */
export function thingWords(plan: Plan, key: string): string {
  const { kind = '', id = '' } = placeOf(key) ?? {}
  switch (kind) {
    case 'stations':
      return plan.stations.has(id as never) ? stationName(plan, id) : 'a station'
    case 'lines': {
      const line = plan.lines.get(id as LineId)
      return line ? lineName(plan, line) : 'a line'
    }
    case 'circuits': {
      const circuit = plan.circuits.get(id as CircuitId)
      return circuit ? circuitName(plan, circuit) : 'a circuit'
    }
    case 'hazards': {
      const hazard = plan.hazards.get(id as HazardId)
      return (hazard && isolated(hazard.name)) || (hazard ? HAZARDS[hazard.hazard].one : 'a hazard')
    }
    case 'plan':
      return 'the plan'
    case 'field':
      return 'a record of the work'
    case 'stock': {
      const wire = id.split(' ', 1)[0]!
      return `the spools of ${nameIn(plan, wire)}`
    }
    case 'features':
      return 'a thing of another program'
    default:
      return nameIn(plan, id)
  }
}

/** The property that a key of the journal names: `the name of Ford`, `the weather`. */
export function propertyWords(plan: Plan, key: string): string {
  const { kind = '', member = '' } = placeOf(key) ?? {}
  const thing = thingWords(plan, key)
  if (kind === 'plan') return planMemberWords(member)
  if (member === '' || member === 'record' || member === 'feature') return thing
  const [first = '', second] = namesOfMember(member)
  if (second === undefined) return `${memberWords(first)} of ${thing}`
  if (first === 'sets') return `the telephone at ${stationName(plan, second)} in ${thing}`
  if (first === 'lines') return `${thingWords(plan, `lines/${second}/`)} in ${thing}`
  return `the electrode at ${stationName(plan, second)} in ${thing}`
}

function memberWords(member: string): string {
  const figure = figureName(member)
  return figure === member ? `the ${OF_THINGS[member] ?? spacedName(member)}` : figure
}

function planMemberWords(member: string): string {
  const [first, second] = namesOfMember(member)
  if (first === 'work') return lowered(WORK[second as WorkField]?.what ?? 'the work')
  return OF_PLAN[member] ?? 'data of another program'
}

const lowered = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1)
