import type { LineField } from '../field/line-field'
import type { LearnedRate } from '../materials/hours'
import type { LeftToDo } from '../materials/left-to-do'
import { LAY_WORDS } from './plan-words'
import type { Tongue } from './tongue'
import { formatCount } from './units'
import { formatHours } from './work-words'

/** `Laid 812 m of 1 200 m, tested 400 m, taken up 100 m.`; empty where nothing was recorded of it. @param wireM as planned */
export function doneSentence(
  { laidM, testedM, recoveredM }: Pick<LineField, 'laidM' | 'testedM' | 'recoveredM'>,
  wireM: number,
  { length }: Tongue,
): string {
  if (laidM + testedM + recoveredM <= 0) return ''
  const parts = [
    `Laid ${length(laidM)} of ${length(wireM)}`,
    ...(testedM > 0 ? [`tested ${length(testedM)}`] : []),
    ...(recoveredM > 0 ? [`taken up ${length(recoveredM)}`] : []),
  ]
  return `${parts.join(', ')}.`
}

/** Nearer to the whole than this is the whole, m. */
const NEARLY_M = 1

/** The same for a list: `laid`, `laid and tested`, `laid 812 m of 1200 m`, `taken up`; empty where nothing was done. */
export function doneInShort(
  { laidM, testedM, recoveredM }: Pick<LineField, 'laidM' | 'testedM' | 'recoveredM'>,
  wireM: number,
  { length }: Tongue,
): string {
  const isAll = (m: number) => m >= wireM - NEARLY_M
  if (laidM > 0) {
    if (!isAll(laidM)) return `laid ${length(laidM)} of ${length(wireM)}`
    return isAll(testedM) ? 'laid and tested' : 'laid'
  }
  if (recoveredM > 0) return isAll(recoveredM) ? 'taken up' : `taken up ${length(recoveredM)}`
  return ''
}

/** `Still to lay: 2.2 km, from 3 spools, 28.6 kg, about 1 h 40 min. 1.2 km lie, to be taken up in 25 min.` */
export function leftSentence({ wires, layH, takeUpH }: LeftToDo, { run, mass }: Tongue): string {
  const sum = (of: (wire: LeftToDo['wires'][number]) => number) =>
    wires.reduce((total, wire) => total + of(wire), 0)
  const [layM, takeUpM] = [sum((wire) => wire.layM), sum((wire) => wire.takeUpM)]
  const spools = sum((wire) => wire.spools.length)
  const from = spools > 0 ? `, from ${formatCount(spools, 'spool')}` : ''
  const lay =
    layM > 0
      ? `Still to lay: ${run(layM)}${from}, ${mass(sum(({ kg }) => kg))}, about ${formatHours(layH)}.`
      : 'Nothing is left to lay.'
  return takeUpM > 0
    ? `${lay} ${run(takeUpM)} lie there, to be taken up in about ${formatHours(takeUpH)}.`
    : lay
}

/** `Surface: 2.5 km/h planned, 1.9 km/h as this crew lays, over 1.4 km in 45 min.` */
export function rateSentence(
  { what, plannedKmPerHour, kmPerHour, groundM, hours }: LearnedRate,
  { quantity, length }: Tongue,
): string {
  const name = what === 'recovery' ? 'taking up' : LAY_WORDS[what]
  const does = what === 'recovery' ? 'takes up' : 'lays'
  const [planned, learned] = [plannedKmPerHour, kmPerHour].map((each) => quantity(each, 'kmPerHour'))
  return `${name.charAt(0).toUpperCase()}${name.slice(1)}: ${planned} planned, ${learned} as this crew ${does}, over ${length(groundM)} in ${formatHours(hours)}.`
}
