import { CABLE_LOSS_CHECKS } from './cable-loss.checks'
import type { Check } from './check'
import { CONDUCTOR_CHECKS } from './conductors.checks'
import { DIRECT_CURRENT_CHECKS } from './direct-current.checks'
import { EARTH_CHECKS } from './earth.checks'
import { LENGTH_CHECKS } from './length.checks'
import { LINE_THEORY_CHECKS } from './line-theory.checks'
import { OVERHEAD_CHECKS } from './overhead.checks'
import { OWN_SHELF_CHECKS } from './own-shelf.checks'
import { PLAN_ARITHMETIC_CHECKS } from './plan-arithmetic.checks'
import { RINGER_CHECKS } from './ringer.checks'
import { SPAN_CHECKS } from './span.checks'
import { VOICE_CHECKS } from './voice.checks'

/** Every published figure that the project is held to, by subject. */
export const ALL_CHECKS: readonly { readonly subject: string; readonly list: readonly Check[] }[] = [
  { subject: 'Conductors', list: CONDUCTOR_CHECKS },
  { subject: 'Line theory', list: LINE_THEORY_CHECKS },
  { subject: 'Loss of cable and field wire', list: CABLE_LOSS_CHECKS },
  { subject: 'Ringers', list: RINGER_CHECKS },
  { subject: 'Direct current', list: DIRECT_CURRENT_CHECKS },
  { subject: 'Speech', list: VOICE_CHECKS },
  { subject: 'Earth electrodes', list: EARTH_CHECKS },
  { subject: 'Lengths', list: LENGTH_CHECKS },
  { subject: "The plan's arithmetic", list: PLAN_ARITHMETIC_CHECKS },
  { subject: 'Spans', list: SPAN_CHECKS },
  { subject: 'Ice, wind and strength', list: OVERHEAD_CHECKS },
  { subject: 'Cords, cells and electronic sets', list: OWN_SHELF_CHECKS },
]
