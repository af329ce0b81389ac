import fc from 'fast-check'
import { BUILT_IN } from '../../src/catalog/built-in'
import type { Position } from '../../src/geo/position'
import { addRecord, undoRecord } from '../../src/plan/add-record'
import {
  putSet,
  putSupply,
  putWire,
  removeOwnSet,
  removeOwnSupply,
  removeOwnWire,
} from '../../src/plan/catalog-edits'
import {
  addCircuit,
  moveSupply,
  renameCircuit,
  setSet,
  setSupply,
  takeLineIn,
  takeLineOut,
} from '../../src/plan/circuit-edits'
import { stationsOfCircuit } from '../../src/plan/circuit-topology'
import { recordsOf } from '../../src/plan/field-records'
import {
  addHazard,
  moveHazardVertex,
  removeHazard,
  renameHazard,
  setHazardKind,
} from '../../src/plan/hazard-edits'
import { HAZARD_KINDS } from '../../src/plan/hazard-schema'
import type { CircuitId, HazardId, LineId, StationId } from '../../src/plan/id'
import { LAYS } from '../../src/plan/lays'
import {
  insertBend,
  moveBend,
  noteLeg,
  removeBend,
  setLays,
  setLegSag,
  setLegSlack,
  setLegSpan,
  setLegSupport,
} from '../../src/plan/leg-edits'
import { addLine, removeLine, reverseLine, setPairs, setReturn, setWire } from '../../src/plan/line-edits'
import type { Plan } from '../../src/plan/plan'
import {
  putStock,
  setAllowance,
  setStock,
  setWeather,
  setWireTemp,
  setWork,
} from '../../src/plan/settings-edits'
import {
  addStation,
  moveStation,
  noteStation,
  removeStation,
  renameStation,
} from '../../src/plan/station-edits'
import { setNote, setTitle } from '../../src/plan/text-edits'
import { WORK_FIELDS } from '../../src/plan/work'
import type { Result } from '../../src/problem'

/** What a random hand does: picks an edit, and picks things of the plan and figures for it. */
export interface Step {
  readonly edit: number
  readonly picks: readonly [number, number, number]
  readonly position: Position
  readonly figure: number
  readonly words: string
}

const settled = (plan: Plan, result: Result<Plan>) => (result.ok ? result.value : plan)
const pick = <T>(list: readonly T[], index: number): T | undefined => list[index % list.length]
const keys = <K>(map: ReadonlyMap<K, unknown>) => [...map.keys()]

type Edit = (plan: Plan, step: Step, newId: string) => Plan

const addAStation: Edit = (plan, { position, words }, newId) =>
  addStation(plan, { id: newId as StationId, name: words, position })

const addALine: Edit = (plan, { picks, position, edit }, newId) => {
  const [from, to] = [pick(keys(plan.stations), picks[0]), pick(keys(plan.stations), picks[1])]
  const wire = pick([...BUILT_IN.wires, ...plan.catalog.wires], picks[2])!.id
  const bends = Array.from({ length: picks[2] % 3 }, () => position)
  const ids = { id: `${newId}-line` as LineId, newCircuitId: `${newId}-circuit` as CircuitId }
  return from && to ? addLine(plan, { ...ids, from, to, bends, wire, lay: pick(LAYS, edit)! }) : plan
}

const onLine =
  (change: (plan: Plan, id: LineId, step: Step) => Plan | Result<Plan>): Edit =>
  (plan, step) => {
    const id = pick(keys(plan.lines), step.picks[0])
    if (!id) return plan
    const after = change(plan, id, step)
    return 'ok' in after ? settled(plan, after) : after
  }

const onCircuit =
  (change: (plan: Plan, id: CircuitId, step: Step) => Plan | Result<Plan>): Edit =>
  (plan, step) => {
    const id = pick(keys(plan.circuits), step.picks[0])
    if (!id) return plan
    const after = change(plan, id, step)
    return 'ok' in after ? settled(plan, after) : after
  }

const onHazard =
  (change: (plan: Plan, id: HazardId, step: Step) => Plan): Edit =>
  (plan, step) => {
    const id = pick(keys(plan.hazards), step.picks[0])
    return id ? change(plan, id, step) : plan
  }

const onStation =
  (change: (plan: Plan, id: StationId, step: Step) => Plan): Edit =>
  (plan, step) => {
    const id = pick(keys(plan.stations), step.picks[0])
    return id ? change(plan, id, step) : plan
  }

const legOf = (plan: Plan, id: LineId, index: number) => index % plan.lines.get(id)!.legs.length
const wires = (plan: Plan) => [...BUILT_IN.wires, ...plan.catalog.wires].map((wire) => wire.id)
const sets = (plan: Plan) => [...BUILT_IN.sets, ...plan.catalog.sets].map((set) => set.id)
const supplies = (plan: Plan) => [...BUILT_IN.supplies, ...plan.catalog.supplies].map((supply) => supply.id)
/** A station of the circuit, now and then one that may be off it. */
const stationFor = (plan: Plan, id: CircuitId, [, index, chance]: Step['picks']) =>
  pick(chance % 5 ? stationsOfCircuit(plan, plan.circuits.get(id)!) : keys(plan.stations), index)!
const ownId = (step: Step) => pick(['own-a', 'own-b', 'wd-1a', 'feed-48', 'crank-1600'], step.picks[0])!

const record: Edit = (plan, { picks, figure, words, position }, newId) => {
  const line = pick(keys(plan.lines), picks[0])
  if (!line) return plan
  const own = { id: `${newId}-record`, line, at: `2026-11-25T10:${10 + (picks[1] % 50)}:00Z` }
  const kind = pick(['laid', 'tested', 'recovered', 'reading', 'track', 'fault', 'note'] as const, picks[2])!
  const added = (() => {
    switch (kind) {
      case 'reading': {
        const read = { far: 'short', what: 'loopOhms', value: figure } as const
        return addRecord(plan, { ...own, kind, wireM: picks[1], toward: 'from', ...read })
      }
      case 'track':
        return addRecord(plan, { ...own, kind, points: [position, [1, 2, null, 'now', figure]] })
      case 'fault':
      case 'note':
        return addRecord(plan, { ...own, kind, wireM: figure, text: words })
      default:
        return addRecord(plan, { ...own, kind, fromM: figure, toM: figure + picks[1] })
    }
  })()
  return settled(plan, added)
}

const EDITS: readonly Edit[] = [
  // Drawing comes often, so that there is a net for the other edits to work on.
  ...Array.from({ length: 8 }, () => addAStation),
  ...Array.from({ length: 16 }, () => addALine),
  onStation((plan, id, { position }) => moveStation(plan, id, position)),
  onStation((plan, id, { words }) => renameStation(plan, id, words)),
  onStation((plan, id, { words }) => noteStation(plan, id, words)),
  onStation((plan, id) => removeStation(plan, id)),
  onLine((plan, id, { position, picks }) => insertBend(plan, id, legOf(plan, id, picks[1]), position)),
  onLine((plan, id, { position, picks }) => moveBend(plan, id, picks[1] % 3, position)),
  onLine((plan, id, { picks }) => removeBend(plan, id, picks[1] % 3)),
  onLine((plan, id, { picks }) => setLays(plan, id, [picks[1] % 3, picks[2] % 3], pick(LAYS, picks[2])!)),
  onLine((plan, id, { picks, figure }) =>
    setLegSlack(plan, id, legOf(plan, id, picks[1]), picks[2] % 2 ? figure : undefined),
  ),
  onLine((plan, id, { picks, figure }) =>
    setLegSag(plan, id, legOf(plan, id, picks[1]), picks[2] % 2 ? figure : undefined),
  ),
  onLine((plan, id, { picks, figure }) => setLegSupport(plan, id, legOf(plan, id, picks[1]), figure)),
  onLine((plan, id, { picks, figure }) => setLegSpan(plan, id, legOf(plan, id, picks[1]), figure)),
  onLine((plan, id, { picks, words }) => noteLeg(plan, id, legOf(plan, id, picks[1]), words)),
  onLine((plan, id, { picks }) => setWire(plan, id, pick(wires(plan), picks[1])!)),
  onLine((plan, id, { picks }) => setPairs(plan, id, picks[1] % 4)),
  onLine((plan, id, { picks, figure }) =>
    setReturn(plan, id, picks[1] % 2 ? 'pair' : 'earth', picks[2] % 2 ? [figure, 50] : undefined),
  ),
  onLine((plan, id) => removeLine(plan, id)),
  onLine((plan, id) => reverseLine(plan, id)),
  ...Array.from({ length: 3 }, () => record),
  (plan, { picks }, newId) => {
    const { id } = pick(recordsOf(plan), picks[0]) ?? {}
    return id === undefined ? plan : undoRecord(plan, id, { id: `${newId}-undone` })
  },
  onCircuit((plan, id, { words }) => renameCircuit(plan, id, words)),
  onCircuit((plan, id, { picks }) => {
    const line = pick(keys(plan.lines), picks[1])
    return line ? takeLineIn(plan, id, line) : plan
  }),
  onCircuit((plan, id, { picks }) => takeLineOut(plan, id, pick(plan.circuits.get(id)!.lines, picks[1])!)),
  ...Array.from({ length: 4 }, () =>
    onCircuit((plan, id, { picks }) =>
      setSet(plan, id, stationFor(plan, id, picks), picks[2] % 4 ? pick(sets(plan), picks[2])! : null),
    ),
  ),
  ...Array.from({ length: 4 }, () =>
    onCircuit((plan, id, { picks }) => {
      const supply = { type: pick(supplies(plan), picks[2])!, at: stationFor(plan, id, picks) }
      return setSupply(plan, id, picks[2] % 4 ? supply : null)
    }),
  ),
  onCircuit((plan, id, { picks }) => moveSupply(plan, id, stationFor(plan, id, picks))),
  (plan, { picks }, newId) => {
    const lines = picks.flatMap((each) => pick(keys(plan.lines), each) ?? [])
    return settled(plan, addCircuit(plan, { id: `${newId}-circuit` as CircuitId, lines }))
  },
  (plan, { words }) => setTitle(plan, words),
  (plan, { words }) => setNote(plan, words),
  (plan, { picks }) => setWeather(plan, picks[0] % 2 ? 'wet' : 'dry'),
  (plan, { figure }) => settled(plan, setWireTemp(plan, figure)),
  (plan, { figure, picks }) =>
    settled(
      plan,
      setAllowance(
        plan,
        pick(['slackPct.surface', 'slackPct.water', 'sagPct', 'tailM'] as const, picks[0])!,
        figure,
      ),
    ),
  (plan, { figure, picks }) =>
    settled(
      plan,
      putStock(plan, { wire: pick(wires(plan), picks[0])!, lengthM: figure, count: picks[1] % 3 }),
    ),
  (plan, { picks }) => settled(plan, setStock(plan, plan.stock.slice(picks[0] % 2))),
  (plan, { figure, picks }) => settled(plan, setWork(plan, pick(WORK_FIELDS, picks[0])!, figure)),
  (plan, step) =>
    settled(plan, putWire(plan, { ...BUILT_IN.wires[0]!, id: ownId(step), loopOhmPerKm: step.figure })),
  (plan, step) =>
    settled(plan, putSet(plan, { ...BUILT_IN.sets[0]!, id: ownId(step), maxLossDb: step.figure })),
  (plan, step) =>
    settled(plan, putSupply(plan, { ...BUILT_IN.supplies[0]!, id: ownId(step), volts: step.figure })),
  (plan, step) => settled(plan, removeOwnWire(plan, ownId(step))),
  (plan, step) => settled(plan, removeOwnSet(plan, ownId(step))),
  (plan, step) => settled(plan, removeOwnSupply(plan, ownId(step))),
  (plan, { picks, position, words }, newId) =>
    settled(
      plan,
      addHazard(plan, {
        id: `${newId}-hazard` as HazardId,
        hazard: pick(HAZARD_KINDS, picks[0])!,
        name: words,
        shape: picks[1] % 2 ? 'line' : 'area',
        vertices: path(position).slice(0, 1 + (picks[2] % 4)),
      }),
    ),
  onHazard((plan, id, { picks, position }) => moveHazardVertex(plan, id, picks[1] % 4, position)),
  onHazard((plan, id, { words }) => renameHazard(plan, id, words)),
  onHazard((plan, id, { picks }) => setHazardKind(plan, id, pick(HAZARD_KINDS, picks[1])!)),
  onHazard((plan, id) => removeHazard(plan, id)),
]

/** The plan after one step of the random hand; `newId` names what it may add. */
export const takeStep = (plan: Plan, step: Step, newId: string): Plan =>
  EDITS[step.edit % EDITS.length]!(plan, step, newId)

const path = (position: Position): readonly Position[] => [
  position,
  [position[1], 5],
  [position[0], 9],
  position,
]

const degrees = (most: number) => fc.double({ min: -most, max: most, noNaN: true })

/** One step of a random hand. */
export const step: fc.Arbitrary<Step> = fc.record({
  edit: fc.nat({ max: EDITS.length - 1 }),
  picks: fc.tuple(fc.nat({ max: 60 }), fc.nat({ max: 60 }), fc.nat({ max: 60 })),
  // Beyond the globe on purpose: a map that is dragged round the world counts on.
  position: fc.tuple(degrees(400), degrees(100)),
  figure: fc.oneof(fc.double(), fc.double({ min: 0, max: 60 }), fc.constantFrom(-0, 0, 1)),
  words: fc.string(),
})

/** A random hand that takes this many steps. */
export const steps = (least: number, most: number): fc.Arbitrary<readonly Step[]> =>
  fc.array(step, { minLength: least, maxLength: most, size: 'max' })
