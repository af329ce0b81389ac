import type { Limit } from '../schema/limit'
import { LAYS, type Lay } from './plan'

const LAY_WORDS: Readonly<Record<Lay, string>> = {
  surface: 'surface legs',
  overhead: 'overhead legs',
  buried: 'buried legs',
  water: 'legs in water',
}

const slackOf = (where: string): Limit => ({ what: `The slack of ${where}`, min: 0, max: 500, unit: '%' })

/** Slack allowances, lay by lay. */
export const SLACK_LIMITS = Object.fromEntries(LAYS.map((lay) => [lay, slackOf(LAY_WORDS[lay])])) as Readonly<
  Record<Lay, Limit>
>

/**
 * Where each figure of a plan must lie, for edits and for files alike. The ranges are wider than any sound plan needs: they
 * keep out slips of the pen, and figures that no formula behind them can bear.
 */
export const LIMITS = {
  wireTempC: { what: 'The temperature of the wire', min: -60, max: 90, unit: '°C' },
  sagPct: { what: 'The sag of overhead legs', min: 0, max: 50, unit: '%' },
  tailM: { what: 'The tail', min: 0, max: 1000, unit: 'm' },
  spliceWasteM: { what: 'The wire used up by a splice', min: 0, max: 100, unit: 'm' },
  reservePct: { what: 'The reserve', min: 0, max: 500, unit: '%' },
  spliceOhms: { what: 'The resistance of a splice', min: 0, max: 1000, unit: 'Ω' },
  spliceMicroS: { what: 'The leakage of a splice', min: 0, max: 1e5, unit: 'µS' },
  coilVoiceDb: { what: 'The speech loss of a coil', min: 0, max: 200, unit: 'dB' },
  coilRingDb: { what: 'The ringing loss of a coil', min: 0, max: 200, unit: 'dB' },
  legSlackPct: slackOf('a leg'),
  legSagPct: { what: 'The sag of a leg', min: 0, max: 50, unit: '%' },
  legSupportM: { what: 'The height of the supports of a leg', min: 0.5, max: 60, unit: 'm' },
  legSpanM: { what: 'The span of a leg', min: 5, max: 500, unit: 'm' },
  pairs: { what: 'The number of pairs', min: 1, max: 100, unit: '', whole: true },
  electrodeOhms: { what: 'The resistance of an electrode', min: 0, max: 1e6, unit: 'Ω' },
  stockLengthM: { what: 'The length of a spool', min: 0, max: 1e6, unit: 'm', above: true },
  stockCount: { what: 'The count of spools', min: 0, max: 100_000, unit: '', whole: true },
} as const satisfies Readonly<Record<string, Limit>>
