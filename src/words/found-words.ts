import type { FaultFound } from '../fault/locate'
import type { NextStep } from '../fault/next-step'
import type { Place } from '../fault/walking'
import { crossingsOf } from '../hazard/crossings'
import { hazardName } from '../hazard/kinds'
import { lineTags } from '../measure/line-tags'
import type { MeasuredLine } from '../measure/measured'
import { pointAtMapM, pointAtWireM } from '../measure/place-on-line'
import type { LineId } from '../plan/id'
import { type Line, lineNumber, type Plan } from '../plan/plan'
import type { Tongue } from './tongue'

type Measured = ReadonlyMap<LineId, MeasuredLine>

const KIND = {
  short: 'a short',
  open: 'a break',
  leak: 'a leak',
  resistance: 'a joint of high resistance',
  crossed: 'a wire that touches one of another circuit',
  swapped: 'a pair that has changed places with another circuit’s',
  split: 'a split pair: one wire of each of two circuits has changed places',
} as const

/** `8 in 10`, `99 in 100`: as one says how likely something is. */
function chanceWords(chance: number): string {
  const tenths = Math.round(chance * 10)
  if (tenths >= 1 && tenths <= 9) return `${tenths} in 10`
  const hundredths = Math.round(chance * 100)
  if (hundredths >= 100) return 'more than 99 in 100'
  return hundredths === 0 ? 'less than 1 in 100' : `${hundredths} in 100`
}

/** What it is: `Most likely a short (9 in 10).` */
export function kindSentence({ kinds, toEarth, wires, several, nothingWrong }: FaultFound): string {
  if (several > 0.5)
    return 'One fault does not explain all of this: there is more than one, or one of the readings is wrong.'
  if (nothingWrong > 0.5)
    return `By all of this nothing is wrong (${chanceWords(nothingWrong)}); a slight fault would not show in it.`
  const [first] = kinds
  if (!first) return ''
  const earth = first.kind === 'leak' && toEarth > first.chance / 2 ? ', one wire on the earth' : ''
  const wire = wires && (wires.a > 0.5 ? ', in wire a' : wires.b > 0.5 ? ', in wire b' : '')
  const what = `${KIND[first.kind]}${earth}${wire ?? ''} (${chanceWords(first.chance)})`
  return nothingWrong > 0.1
    ? `Perhaps nothing is wrong (${chanceWords(nothingWrong)}); if something is, most likely ${what}.`
    : `Most likely ${what}.`
}

/** Between which tags a stretch lies: `between tags 4/3 and 4/4`. */
function tagsWords(plan: Plan, measured: Measured, line: LineId, fromM: number, toM: number): string {
  const drawn = plan.lines.get(line)!
  const tags = lineTags(plan, measured.get(line)!, drawn)
  const before = tags.findLast(({ wireM }) => wireM <= fromM) ?? tags[0]
  const after = tags.find(({ wireM }) => wireM >= toM) ?? tags.at(-1)
  if (!before || !after || before === after) return ''
  const name = (number: number) => `${lineNumber(plan, line)}/${number}`
  return `between tags ${name(before.number)} and ${name(after.number)}`
}

/** The band of 95 %: `95 in 100 that it lies from 610 m to 660 m of wire from Camp on Camp – Hill: a stretch of 50 m.` */
export function bandSentence(
  plan: Plan,
  { line, fromM, toM }: NonNullable<FaultFound['band']>,
  say: Tongue,
): string {
  const from = say.name(plan.lines.get(line as LineId)!.from)
  return `95 in 100 that it lies from ${say.length(fromM)} to ${say.length(toM)} of wire from ${from} on ${say.name(line)}: a stretch of ${say.length(toM - fromM)}.`
}

/** A reading that tells nothing, by its place in the list. */
export const unusedSentence = (index: number): string =>
  `No. ${index + 1} of what is known tells nothing: nothing there rings, speaks or feeds so that it could be.`

/** What is farther away than this says little of a place, m. */
const NEARBY_M = 400

/** By what one knows a place on the ground: `60 m past County road`; empty where nothing is near. */
function landmarkWords(plan: Plan, measured: MeasuredLine, line: Line, groundM: number, say: Tongue): string {
  let runM = 0
  const bends = measured.legs.slice(0, -1).map((leg, i) => {
    runM += leg.groundM
    return { groundM: runM, name: `bend ${i + 1}` }
  })
  const crossed = crossingsOf(plan, line).map(({ kind, name, distanceM }) => ({
    groundM: pointAtMapM(plan, measured, line, distanceM).groundM,
    name: hazardName(name, kind),
  }))
  const farM = (each: { readonly groundM: number }) => Math.abs(each.groundM - groundM)
  // What one sees from afar goes before a bend of the wire.
  const [nearest] = [crossed, bends].flatMap((kind) =>
    kind
      .filter((each) => farM(each) <= NEARBY_M)
      .toSorted((a, b) => farM(a) - farM(b))
      .slice(0, 1),
  )
  if (!nearest) return ''
  const side = nearest.groundM <= groundM ? 'past' : 'before'
  return `${say.length(farM(nearest))} ${side} ${nearest.name}`
}

/** Where it is, in a sentence for each place. */
export function placeSentence(
  plan: Plan,
  measured: Measured,
  { line, fromM, toM, chance }: FaultFound['places'][number],
  say: Tongue,
): string {
  const id = line as LineId
  const drawn = plan.lines.get(id)!
  const tags = tagsWords(plan, measured, id, fromM, toM)
  const { groundM } = pointAtWireM(plan, measured.get(id)!, drawn, (fromM + toM) / 2)
  const landmark = landmarkWords(plan, measured.get(id)!, drawn, groundM, say)
  const where = [tags, landmark].filter(Boolean).join(', ')
  const stretch = `${say.length(fromM)} to ${say.length(toM)} of wire from ${say.name(drawn.from)}`
  const how = chanceWords(chance).replace('more', 'More').replace('less', 'Less')
  return `${how} on ${say.name(line)}${where && ` ${where}`}: ${stretch}, about ${say.length(groundM)} along the ground.`
}

const TAKE = {
  loopOhms: { open: 'measure the ohms of the loop', short: 'measure the ohms of the loop' },
  nanoF: { open: 'measure the capacitance', short: 'measure the capacitance' },
  kOhms: { open: 'measure the insulation', short: 'measure the ohms of the loop' },
  ringVolts: { open: '', short: '' },
  mA: { open: '', short: '' },
  lossDb: { open: '', short: '' },
} as const

function placeWords(plan: Plan, measured: Measured, at: Place, say: Tongue): string {
  if (typeof at === 'string') return say.name(at)
  const id = at.line as LineId
  const line = plan.lines.get(id)!
  if (at.wireM < 1) return say.name(line.from)
  if (at.wireM > measured.get(id)!.wireM - 1) return say.name(line.to)
  const tag = lineTags(plan, measured.get(id)!, line).find(({ wireM }) => Math.abs(wireM - at.wireM) < 1)
  return tag
    ? `tag ${lineNumber(plan, id)}/${tag.number}`
    : `${say.length(at.wireM)} of wire from ${say.name(line.from)} on ${say.name(id)}`
}

/** What to do next: `At tag 4/3, open the line and measure the ohms of the loop towards Camp, with the far end open.` */
export function nextSentence(
  plan: Plan,
  measured: Measured,
  { at, take, until }: NextStep,
  say: Tongue,
): string {
  const place = placeWords(plan, measured, at, say)
  if (!take) {
    const end = placeWords(plan, measured, until!, say)
    return end === place ? `Look at the wire at ${place}.` : `Walk the wire from ${place} to ${end} and look.`
  }
  const line = typeof at === 'string' ? undefined : plan.lines.get(at.line as LineId)
  const toward = line ? (take.toward === 'from' ? line.from : line.to) : take.toward
  const far = take.far === 'short' ? 'its two wires joined there' : 'the far end open'
  const what = take.far === 'set' ? '' : TAKE[take.what][take.far]
  if (take.wire)
    return `At ${place}, open the line and measure the ohms of wire ${take.wire} to the earth towards ${say.name(toward)}, with the far end open and the telephones off.`
  return `At ${place}, open the line and ${what} towards ${say.name(toward)}, with ${far} and the telephones off.`
}
