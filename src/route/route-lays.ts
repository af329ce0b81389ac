import { legGeometry } from '../geo/leg-length'
import { shortWayDeg } from '../geo/longitude'
import type { Position } from '../geo/position'
import { crossingsAlong } from '../hazard/crossings'
import { HAZARDS } from '../hazard/kinds'
import type { Hazard, Lay } from '../plan/plan'
import { degToRad } from '../units'

/** A crossing so flat that it would be buried for ever: it is laid as if it crossed at this, degrees. */
const FLATTEST_DEG = 20
/** Legs shorter than this are not worth a bend, m. */
const LEAST_LEG_M = 2

interface Stretch {
  readonly startM: number
  endM: number
  readonly lay: Lay
}

/**
 * Lays a way over the surface, but at each crossing as the hazard's kind wants it, with a bend on each side. Gives its bends and the
 * lay of each leg.
 */
export function layCrossings(
  hazards: Iterable<Hazard>,
  way: readonly Position[],
): { readonly bends: readonly Position[]; readonly lays: readonly Lay[] } {
  const surface = way.slice(1).map(() => ({ lay: 'surface' as const }))
  const bendsM = [0]
  for (let i = 1; i < way.length; i++) bendsM.push(bendsM[i - 1]! + legGeometry(way[i - 1]!, way[i]!).mapM)
  const lengthM = bendsM.at(-1)!

  const stretches: Stretch[] = []
  for (const { kind, distanceM, insideM, angleDeg = 90 } of crossingsAlong(hazards, way, surface)) {
    const at = HAZARDS[kind].route.laid
    if (!at) continue
    const sideM = at.sideM / Math.sin(degToRad(Math.max(angleDeg, FLATTEST_DEG)))
    const last = stretches.at(-1)
    const startM = Math.max(last?.endM ?? 0, distanceM - sideM)
    const endM = Math.min(lengthM, distanceM + insideM + sideM)
    if (last && last.lay === at.lay && startM - last.endM < LEAST_LEG_M) last.endM = Math.max(last.endM, endM)
    else if (endM > startM) stretches.push({ startM, endM, lay: at.lay })
  }

  const isApart = (atM: number, others: readonly number[]) =>
    others.every((other) => Math.abs(other - atM) >= LEAST_LEG_M)
  const placesM = [...bendsM]
  for (const { startM, endM } of stretches) {
    for (const atM of [startM, endM]) if (isApart(atM, placesM)) placesM.push(atM)
  }
  placesM.sort((a, b) => a - b)
  const layAt = (atM: number): Lay =>
    stretches.find(({ startM, endM }) => atM >= startM && atM <= endM)?.lay ?? 'surface'
  return {
    bends: placesM.slice(1, -1).map((atM) => pointAt(way, bendsM, atM)),
    lays: placesM.slice(1).map((atM, i) => layAt((placesM[i]! + atM) / 2)),
  }
}

function pointAt(way: readonly Position[], bendsM: readonly number[], atM: number): Position {
  const bend = bendsM.indexOf(atM)
  if (bend >= 0) return way[bend]!
  const next = bendsM.findIndex((m) => m > atM)
  const [a, b] = [way[next - 1]!, way[next]!]
  const t = (atM - bendsM[next - 1]!) / (bendsM[next]! - bendsM[next - 1]!)
  return [a[0] + shortWayDeg(b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t]
}
