import { isolated } from '../../isolated'
import { pairsOf } from '../../plan/pair-of'
import { type Line, stationName } from '../../plan/plan'
import { lineProfile } from '../../report/line-profile'
import type { ReportLine } from '../../report/report'
import { doneSentence } from '../../words/done-words'
import { nameIn, tongueOf } from '../../words/tongue'
import { formatLengthM, formatOhms, formatRunM } from '../../words/units'
import { verdictSentence } from '../../words/verdict-words'
import { formatHours } from '../../words/work-words'
import type { PaperSource } from '../paper-source'

const circuitsOn = ({ plan }: PaperSource, line: Line) =>
  [...plan.circuits.values()].filter(({ lines }) => lines.includes(line.id))

/** Which circuit goes on which pair, and which ride on it: `pair 1 River net, pair 2 spare, phantom over pairs 1 and 2 Hill net`. */
function pairWords(source: PaperSource, line: Line): string {
  const { plan } = source
  const all = circuitsOn(source, line)
  const circuits = all.filter(({ over }) => !over)
  const on = (pair: number) => circuits.find((circuit) => pairsOf(plan, circuit, line).includes(pair))
  const pairs = Array.from({ length: line.pairs }, (_, i) => {
    const circuit = on(i + 1)
    return `pair ${i + 1} ${circuit ? nameIn(plan, circuit.id) : 'spare'}`
  })
  const riders = all.flatMap((circuit) => {
    if (!circuit.over) return []
    const below = pairsOf(plan, circuit, line)
    const over = `${below.length > 1 ? 'pairs' : 'pair'} ${below.join(' and ')}`
    return [`${circuit.over} over ${over} ${nameIn(plan, circuit.id)}`]
  })
  return [...pairs, ...riders].join(', ')
}

/** What the line is, how long, what it carries, and how far it is done. */
export function lineFacts(source: PaperSource, line: Line, measured: ReportLine): readonly string[] {
  const { plan, catalog, ground, system } = source
  const say = tongueOf(plan, system)
  const wire = isolated(catalog.wires.get(line.wire)?.name ?? line.wire)
  const profile = lineProfile(plan, line, measured, catalog.wires.get(line.wire), ground)
  return [
    `${wire}${line.worn ? ', worn' : ''}; ${line.return === 'earth' ? `one wire and the earth: ${pairWords(source, line).replace('pair 1 ', '')}` : pairWords(source, line)}.`,
    line.return === 'earth'
      ? `Ground ${formatRunM(measured.groundM, system)}; wire ${formatLengthM(measured.wireM, system)}; wire and both rods in series ${formatOhms(measured.loopOhms)}.`
      : `Ground ${formatRunM(measured.groundM, system)}; wire ${formatLengthM(measured.wireM, system)} a pair; loop with the far end shorted ${formatOhms(measured.loopOhms)}.`,
    doneSentence(measured.field, measured.wireM, say),
    profile
      ? `It climbs ${formatLengthM(profile.ground.climbM, system)} and falls ${formatLengthM(profile.ground.descentM, system)}.`
      : '',
  ].filter(Boolean)
}

/** How sure each circuit on it is. */
export function lineVerdicts({ plan, report, odds, system }: PaperSource, line: Line): readonly string[] {
  const say = tongueOf(plan, system)
  return report.circuits
    .filter(({ id }) => plan.circuits.get(id)?.lines.includes(line.id))
    .map((circuit) => `${nameIn(plan, circuit.id)} ${verdictSentence(circuit, odds.get(circuit.id), say)}`)
}

/** How long it takes; empty where that is not known. */
export function lineHours({ report }: PaperSource, line: Line): string {
  const hours = report.hours.lines.find((each) => each.line === line.id)
  return hours ? `About ${formatHours(hours.totalH)} to lay, with a crew of ${hours.crew}.` : ''
}

/** How lines are laid, and how they are tested before anybody is connected to them. Lines that are told together have all a pair of wires. */
export function layingWords({ plan, system }: PaperSource, lines: readonly Line[]): string {
  const line = lines[0]!
  const at = (end: 'from' | 'to', several: string) =>
    lines.every((each) => each[end] === line[end]) ? stationName(plan, line[end]) : several
  const [from, to] = [at('from', 'the start'), at('to', 'the far end')]
  const ties = `Leave ${formatLengthM(plan.allowances.tailM, system)} at both ends; tie in at ends, bends, both sides of a crossing, every support; hang tags as you pass.`
  if (line.return === 'earth') {
    const [atFrom, atTo] = line.electrodeOhms ?? [0, 0]
    return (
      `${ties} Earth return: drive rods at both ends until they are reckoned with: at ${from} ${formatOhms(atFrom)}, at ${to} ${formatOhms(atTo)}; measure each by ` +
      'fall of potential before the wire is joined to it. Keep people and animals off the rods. One stays with a crank set at ' +
      `${from}, one goes with the crew: at each tag and splice join the set between the wire and a rod driven there, ring and speak; at ${to} the same on its own rods.`
    )
  }
  return (
    `${ties} Meter and crank test set at ${from}, crank test set with the crew, nothing else on the line: at each tag and splice short the pair until the loop is read, ` +
    `take it off, ring and speak both ways; last from ${to}. Ring stations only once the whole circuit lies.`
  )
}
