import type { SpotFound } from '../report/best-places'
import type { Tongue } from './tongue'

/** Where it is: `at Ford`, `on Camp – Ford, 640 m from Camp`. */
export const spotWords = ({ spot, groundM = 0, from }: SpotFound, { name, run }: Tongue): string =>
  spot.kind === 'station'
    ? `at ${name(spot.id)}`
    : `on ${name(spot.line)}, ${run(groundM)} from ${name(from ?? '')}`

const sharePct = (pct: number): string =>
  Math.abs(pct) >= 1000 ? 'more than tenfold' : `${Math.round(pct)} %`

/** What it would leave, beside what there is: `23 % to spare at worst, where there are 11 % now; 120 m more wire`. */
export function spareWords(found: SpotFound, nowPct: number | null, { run }: Tongue): string {
  const { worstMarginPct, extraM } = found
  const left =
    worstMarginPct >= 0
      ? `${sharePct(worstMarginPct)} to spare at worst`
      : `${sharePct(-worstMarginPct)} short at worst`
  const now =
    nowPct === null
      ? ''
      : nowPct >= 0
        ? `; now ${sharePct(nowPct)} to spare`
        : `; now ${sharePct(-nowPct)} short`
  const wire = Math.round(extraM) > 0 ? `; ${run(extraM)} more wire` : ''
  return left + now + wire
}
