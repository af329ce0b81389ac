import { useSignal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import { addRecord } from '../plan/add-record'
import type { TrackPoint } from '../plan/field-schema'
import type { LineId } from '../plan/id'
import { newRecordId } from '../state/new-record-id'
import type { Store } from '../state/store'
import { recordedNow } from '../state/who-records'
import type { Fix } from './use-position'

/** A place is kept where so much time has passed since the last, or so much way, s and degrees of latitude (4 m): a track stays small. */
const STEP_S = 5
const STEP_DEG = 4 / 111_000
/** Fewer places tell of no way. */
const LEAST_POINTS = 5

/**
 * Keeps the way that is walked while the device tells its position: beside the plan as it grows, so that a crash loses nothing of it, and as
 * a record once the walk ends.
 */
export function useKeptTrack(store: Store, line: LineId) {
  const isWanted = useSignal(true)
  const points = useRef<readonly TrackPoint[]>([])
  const count = useSignal(0)
  const put = (now: readonly TrackPoint[]) => {
    points.current = now
    count.value = now.length
    store.underWay.value = now.length > 0 ? { kind: 'track', line, points: now } : null
  }
  const take = ({ position: [lonDeg, latDeg], accuracyM, at, elevationM }: Fix) => {
    if (!isWanted.value) return
    const last = points.current.at(-1)
    if (last?.[3] && !isStep(last, lonDeg, latDeg, at)) return
    const round = (value: number, digits: number) => Number(value.toFixed(digits))
    const time = `${at.toISOString().slice(0, 19)}Z`
    const heightM = elevationM === null ? null : round(elevationM, 1)
    put([...points.current, [round(lonDeg, 7), round(latDeg, 7), heightM, time, round(accuracyM, 1)]])
  }
  const end = () => {
    const walked = points.current
    if (walked.length === 0) return
    put([])
    if (walked.length < LEAST_POINTS) return
    store.tryEdit((plan) =>
      addRecord(plan, { id: newRecordId(plan), ...recordedNow(), line, kind: 'track', points: walked }),
    )
  }
  const latest = useRef(end)
  latest.current = end
  useEffect(() => () => latest.current(), [])
  return { take, end, count: count.value, isWanted }
}

function isStep([lonDeg, latDeg, , time]: TrackPoint, lon: number, lat: number, at: Date): boolean {
  const passedS = (at.getTime() - Date.parse(time!)) / 1000
  const east = (lon - lonDeg) * Math.cos((lat * Math.PI) / 180)
  return passedS >= STEP_S || Math.hypot(east, lat - latDeg) >= STEP_DEG
}
