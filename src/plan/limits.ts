import { limitsOf } from '../schema/kept'
import { ELECTRODE, LEG, LINE_MEMBERS } from './line-schema'
import { ALLOWANCES, COIL, SETTINGS, SLACK, STOCK } from './settings-schema'

/** Slack allowances, lay by lay. */
export const SLACK_LIMITS = limitsOf(SLACK)

const [leg, coil, stock] = [limitsOf(LEG), limitsOf(COIL), limitsOf(STOCK)] as const

/**
 * Where each figure of a plan must lie, for edits and for files alike: the schemas say it. The ranges are wider than any sound plan
 * needs: they keep out slips of the pen, and figures that no formula behind them can bear.
 */
export const LIMITS = {
  ...limitsOf(SETTINGS),
  ...limitsOf(ALLOWANCES),
  ...limitsOf(LINE_MEMBERS),
  coilVoiceDb: coil.voiceDb,
  coilRingDb: coil.ringDb,
  legSlackPct: leg.slackPct,
  legSagPct: leg.sagPct,
  legSupportM: leg.supportM,
  legSpanM: leg.spanM,
  electrodeOhms: ELECTRODE.limit,
  stockLengthM: stock.lengthM,
  stockCount: stock.count,
}
