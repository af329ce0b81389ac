import { SUPPLY } from '../catalog/supply'
import { SET } from '../catalog/telephone-set'
import { WIRE } from '../catalog/wire'
import type { Position } from '../geo/position'
import {
  type Allowances,
  type Circuit,
  type Hazard,
  type Leg,
  type Line,
  type PaperWishes,
  type Plan,
  type Rest,
  type Station,
  verticesOf,
} from '../plan/plan'
import { WORK_FIELDS, type Work } from '../plan/work'
import { inOrder } from '../schema/parts'
import { isObject } from '../schema/schema'
import { unmarked } from './exact-members'
import { FORMAT, VERSION } from './parse-plan'

/** The plan as the text of its file: two-space JSON in a stable order, with every member that was not known when it was read. */
export function formatPlan(plan: Plan): string {
  const { rest } = plan
  const file = {
    type: 'FeatureCollection',
    plan: {
      format: FORMAT,
      version: VERSION,
      title: plan.title,
      note: plan.note,
      weather: plan.weather,
      wireTempC: plan.wireTempC,
      allowances: allowancesOf(plan.allowances),
      catalog: {
        wires: plan.catalog.wires.map((wire) => inOrder(WIRE, wire)),
        sets: plan.catalog.sets.map((set) => inOrder(SET, set)),
        supplies: plan.catalog.supplies.map((supply) => inOrder(SUPPLY, supply)),
        ...rest?.catalog,
      },
      circuits: [...plan.circuits.values()].map(circuitOf),
      stock: plan.stock.map(({ rest: more, ...known }) => ({ ...known, ...more })),
      ...(plan.work && { work: workInOrder(plan.work) }),
      ...(plan.papers && { papers: papersInOrder(plan.papers) }),
      ...rest?.plan,
    },
    features: [
      ...[...plan.stations.values()].map(stationFeature),
      ...[...plan.lines.values()].map((line) => lineFeature(plan, line)),
      ...[...plan.hazards.values()].map(hazardFeature),
      ...(rest?.features ?? []),
    ],
    ...rest?.file,
  }
  return `${unmarked(JSON.stringify(file, null, 2))}\n`
}

function allowancesOf({ slackPct, rest = {}, ...plain }: Allowances) {
  const { sagPct, tailM, spliceWasteM, reservePct, spliceOhms, spliceMicroS, coil } = plain
  const { surface, overhead, buried, water } = slackPct
  const { slackPct: slackRest, ...others } = rest
  return {
    slackPct: { surface, overhead, buried, water, ...(isObject(slackRest) && slackRest) },
    sagPct,
    tailM,
    spliceWasteM,
    reservePct,
    spliceOhms,
    spliceMicroS,
    ...(coil && { coil: { voiceDb: coil.voiceDb, ringDb: coil.ringDb, ...coil.rest } }),
    ...others,
  }
}

const workInOrder = ({ rest, ...figures }: Work) => ({
  ...Object.fromEntries(WORK_FIELDS.map((field) => [field, figures[field]])),
  ...rest,
})

const papersInOrder = ({ revision, size, kinds, rest }: PaperWishes) => ({ revision, size, kinds, ...rest })

const circuitOf = ({ id, name, lines, sets, supply, over, electrodeOhms, rest }: Circuit) => ({
  id,
  name,
  lines,
  sets: Object.fromEntries(sets),
  supply: supply && { type: supply.type, at: supply.at, ...supply.rest },
  ...(over && { over }),
  ...(electrodeOhms && { electrodeOhms }),
  ...rest,
})

interface Parts {
  readonly feature?: Rest
  readonly properties?: Rest
  readonly geometry?: Rest
}

const feature = (id: string, properties: object, type: string, coordinates: unknown, rest: Parts = {}) => ({
  type: 'Feature',
  id,
  properties: { ...properties, ...rest.properties },
  geometry: { type, coordinates, ...rest.geometry },
  ...rest.feature,
})

const stationFeature = ({ id, name, note, position, rest }: Station) =>
  feature(id, { kind: 'station', name, note }, 'Point', position, rest)

function lineFeature(plan: Plan, line: Line) {
  const { id, from, to, wire, pairs, return: way, electrodeOhms, worn, legs, rest } = line
  const told = { ...(electrodeOhms && { electrodeOhms }), ...(worn && { worn }) }
  const properties = { kind: 'line', from, to, wire, pairs, return: way, ...told, legs: legs.map(legOf) }
  const vertices = [...verticesOf(plan, line)]
  const [atFrom, atTo] = line.endElevationsM ?? []
  vertices[0] = atElevation(vertices[0]!, atFrom)
  vertices[vertices.length - 1] = atElevation(vertices.at(-1)!, atTo)
  return feature(id, properties, 'LineString', vertices, rest)
}

const atElevation = (position: Position, elevationM: number | null | undefined): Position =>
  typeof elevationM === 'number' ? [position[0], position[1], elevationM] : position

const legOf = ({ lay, slackPct, sagPct, supportM, spanM, note, rest }: Leg) => ({
  lay,
  slackPct,
  sagPct,
  supportM,
  spanM,
  note,
  ...rest,
})

const hazardFeature = ({ id, hazard, name, geometry, rest }: Hazard) =>
  feature(id, { kind: 'hazard', hazard, name }, geometry.type, geometry.coordinates, rest)
