import type { CircuitModel } from '../budget/circuit-model'
import type { Conditions } from '../budget/conditions'
import {
  locateByFarad,
  locateByLoopOhm,
  murrayOhm,
  openPart,
  shortFromBothEndsOhm,
  varleyOhm,
} from '../budget/fault-location'
import { type WayReadings, wayReadings } from '../budget/way-readings'
import type { LineId } from '../plan/id'

/** What was read on a dead line, with every set and every branch taken off. */
export type FaultReading =
  /** Loop ohms into a short, less the ohms that the short itself is taken to have. */
  | { readonly kind: 'short'; readonly ohms: number; readonly shortOhms: number }
  /** The same from both ends: the ohms of the short fall out. */
  | { readonly kind: 'short-both-ends'; readonly nearOhms: number; readonly farOhms: number }
  /** Slide-wire bridge, the wires joined at the far end: arm at the faulty wire, arm at the good one. */
  | { readonly kind: 'murray'; readonly faultyArm: number; readonly goodArm: number }
  /** Bridge of equal arms, the wires joined at the far end; the loop as read, or undefined for the plan's. */
  | { readonly kind: 'varley'; readonly rheostatOhms: number; readonly loopOhms: number | undefined }
  /** Capacitance into a broken line. */
  | { readonly kind: 'open'; readonly nanoF: number }
  /** The same from both ends: only their ratio counts. */
  | { readonly kind: 'open-both-ends'; readonly nearNanoF: number; readonly farNanoF: number }

/** Where the meter stands, towards which station it reads, and what. Stations by id. */
export interface FaultQuestion {
  readonly from: string
  readonly to: string
  readonly reading: FaultReading
}

/** Why a reading has no answer. */
export type Refusal = 'no-way' | 'bridge-by-earth' | 'before-meter'

export type FaultAnswer =
  | {
      readonly kind: 'place'
      readonly line: LineId
      /** Wire from the line's own `from`, m. */
      readonly wireM: number
      /** Wire from the meter, m, and the ends between which it lies with the wire 10 °C colder or warmer. */
      readonly totalM: number
      readonly leastM: number
      readonly mostM: number
      /** Whether one walks the line from its `from` when one comes from the meter. */
      readonly forward: boolean
    }
  | { readonly kind: 'beyond'; readonly whole: WayReadings }
  | { readonly kind: 'refused'; readonly why: Refusal }

/** How far the wire may be from the plan's temperature, °C. */
export const UNSURE_C = 10

/** Finds the place of a fault from what was read. Distances are along the wire. */
export function findFault(model: CircuitModel, conditions: Conditions, question: FaultQuestion): FaultAnswer {
  const { from, to, reading } = question
  const whole = wayReadings(model, conditions, from, to)
  if (from === to || !whole) return refused('no-way')
  if (whole.byEarth && (reading.kind === 'murray' || reading.kind === 'varley'))
    return refused('bridge-by-earth')
  const at = locate(model, conditions, question, whole)
  if (at === 'before') return refused('before-meter')
  if (at === 'beyond') return { kind: 'beyond', whole }
  const around = [-UNSURE_C, UNSURE_C].map((change) => {
    const warmer = { ...conditions, wireTempC: conditions.wireTempC + change }
    const there = locate(model, warmer, question, wayReadings(model, warmer, from, to)!)
    return there === 'before' ? 0 : there === 'beyond' ? whole.wireM : there.totalM
  })
  const line = model.lines.find(({ id }) => id === at.line)!
  return {
    kind: 'place',
    line: at.line as LineId,
    wireM: at.wireM,
    totalM: at.totalM,
    leastM: Math.min(at.totalM, ...around),
    mostM: Math.max(at.totalM, ...around),
    forward: startsAt(model, conditions, from, line, at),
  }
}

const refused = (why: Refusal): FaultAnswer => ({ kind: 'refused', why })

/** The start of a line is nearer to the meter than the fault by just the wire between them. */
function startsAt(
  model: CircuitModel,
  conditions: Conditions,
  from: string,
  line: CircuitModel['lines'][number],
  place: { readonly wireM: number; readonly totalM: number },
): boolean {
  const [toStart, toEnd] = [line.from, line.to].map(
    (node) => wayReadings(model, conditions, from, model.stations[node]!)!.wireM,
  )
  return (
    Math.abs(toStart! + place.wireM - place.totalM) <=
    Math.abs(toEnd! + line.wireM - place.wireM - place.totalM)
  )
}

function locate(
  model: CircuitModel,
  conditions: Conditions,
  { from, to, reading }: FaultQuestion,
  whole: WayReadings,
) {
  const amount = amountTo(reading, whole)
  if (!(amount >= 0)) return 'before'
  const by = reading.kind === 'open' || reading.kind === 'open-both-ends' ? locateByFarad : locateByLoopOhm
  const located = by(model, conditions, from, to, amount)
  return located.kind === 'place' ? located.place : 'beyond'
}

/** Loop ohms up to the fault, or farads. A bridge reads one wire, and the loop has two. */
function amountTo(reading: FaultReading, whole: WayReadings): number {
  switch (reading.kind) {
    case 'short':
      return reading.ohms - reading.shortOhms
    case 'short-both-ends':
      return shortFromBothEndsOhm(reading.nearOhms, reading.farOhms, whole.loopOhm)
    case 'murray':
      return 2 * murrayOhm(whole.loopOhm, reading.faultyArm, reading.goodArm)
    case 'varley': {
      // A loop that was read is as warm as the rheostat's reading: their ratio knows no temperature.
      const loopOhm = reading.loopOhms ?? whole.loopOhm
      return 2 * varleyOhm(loopOhm, reading.rheostatOhms) * (whole.loopOhm / loopOhm)
    }
    case 'open':
      return reading.nanoF * 1e-9
    case 'open-both-ends':
      return openPart(reading.nearNanoF, reading.farNanoF) * whole.farad
  }
}
