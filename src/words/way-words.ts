import type { RouteFigures } from '../report/route-figures'
import type { Tongue } from './tongue'
import { formatCount } from './units'
import { formatHours } from './work-words'

/** `Way 2: 2.63 km along the ground, 3.20 km of wire, 42 m of climb, 2 cautions, 3 h 10 min to lay; 5 % dearer than way 1.` */
export function waySentence(
  index: number,
  { groundM, wireM, climbM, cautions, hours }: RouteFigures,
  dearer: number,
  { run, length }: Tongue,
): string {
  const figures = [
    `${run(groundM)} along the ground`,
    `${run(wireM)} of wire`,
    ...(climbM === undefined ? [] : [`${length(climbM)} of climb`]),
    formatCount(cautions.length, 'caution'),
    `${formatHours(hours)} to lay`,
  ]
  const besides = index === 0 ? '' : `; ${Math.round(100 * dearer)} % dearer than way 1`
  return `Way ${index + 1}: ${figures.join(', ')}${besides}.`
}
