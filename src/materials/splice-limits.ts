import { wireMOnLeg } from '../measure/along'
import type { MeasuredLine } from '../measure/measured'
import type { Stretch } from './cut-runs'

/** Where on a line no splice should fall: on overhead legs, where it hangs out of reach and bears the pull, and under water. */
export function splicesToAvoid(measured: MeasuredLine): readonly Stretch[] {
  return measured.legs.flatMap(({ lay }, legIndex) =>
    lay === 'overhead' || lay === 'water'
      ? [{ fromM: wireMOnLeg(measured, legIndex, 0), toM: wireMOnLeg(measured, legIndex, 1) }]
      : [],
  )
}
