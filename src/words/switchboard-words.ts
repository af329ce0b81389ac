import type { Outlook } from '../report/outlook'
import type { Switchboard } from '../report/switchboard'
import type { Trunk } from '../report/trunks'
import type { Tongue } from './tongue'
import { formatCount, formatDb, formatList, plainNumber } from './units'

/** Which through calls are faint: the worst, and how many there are besides. */
export function faintSentence({ faint }: Switchboard, { name }: Tongue): string {
  const [worst, ...others] = faint
  if (!worst) return 'Every call through it is loud enough.'
  const { from, to, lossDb, maxDb } = worst
  const more =
    others.length === 0
      ? ''
      : ` ${formatCount(others.length, 'more call')} through it ${others.length === 1 ? 'is' : 'are'} faint.`
  return `The faintest call through it is ${name(from)} with ${name(to)}: ${formatDb(lossDb)} of loss, where ${plainNumber(maxDb)} dB is the most.${more}`
}

/** How many calls at once, and what happens to one while another rings. */
export function trafficSentence({ kind, callsAtOnce, jacks }: Switchboard, { name }: Tongue): string {
  const most =
    callsAtOnce === 0 ? 'No two lines can be joined.' : `${formatCount(callsAtOnce, 'call')} at once.`
  const rings =
    kind === 'board'
      ? 'Ringing goes out on the one line that is called; calls in progress hear nothing of it.'
      : 'It rings only the line that is called; calls in progress hear nothing of it, and a caller of a busy line hears the busy tone.'
  const shared = jacks.filter(({ stations }) => stations.length > 1)
  if (shared.length === 0) return `${most} ${rings}`
  const names = shared.map(({ stations }) => formatList(stations.map(name), stations.length))
  return `${most} ${rings} On a shared line (${names.join('; ')}) every bell rings, and a call of one keeps the others off it.`
}

/** How long the battery lasts at so many calls a day; empty where nothing is known of it. */
export function callsPerDaySentence(rows: Outlook['callsPerDay']): string {
  const told = rows.flatMap(({ calls, days }) =>
    days === null
      ? []
      : [
          `${formatCount(days < 2 ? Math.round(days * 24) : Math.round(days), days < 2 ? 'hour' : 'day')} at ${calls}`,
        ],
  )
  return told.length === 0
    ? ''
    : `Its battery lasts ${formatList(told, told.length)} calls of three minutes a day.`
}

/** What a trunk does, and who puts its calls through. */
export function trunkSentence({ stations, calls, joinsExchanges }: Trunk, { name }: Tongue): string {
  const between = `${name(stations[0])} and ${name(stations[1])}`
  if (joinsExchanges)
    return `Nobody is called over the line between ${between}: each exchange takes the other for a telephone. Put a board in the place of one.`
  const worst = calls[0]
  const hands = worst ? worst.byHand : []
  const who =
    hands.length === 2
      ? 'both operators put every call through'
      : `the operator at ${name(hands[0] ?? stations[0])} puts every call through`
  const loss = worst
    ? ` The faintest, ${name(worst.from)} with ${name(worst.to)}, loses ${formatDb(worst.lossDb)} of ${plainNumber(worst.maxDb)} dB.`
    : ''
  return `Between ${between} ${who}.${loss}`
}
