import type { StripMarkKind } from '../figure/strip'
import type { Position } from '../geo/position'
import { HAZARDS, hazardName } from '../hazard/kinds'
import { pointAtMapM, wireMAtGroundM, wireMOnLeg } from '../measure/place-on-line'
import type { StationId } from '../plan/id'
import { pairEndsAt } from '../plan/pair-ends'
import { type Line, type Plan, stationName, vertexOf } from '../plan/plan'
import type { Caution } from '../report/caution'
import type { ReportLine } from '../report/report'
import { cautionText } from '../words/caution-words'
import { directionWords } from '../words/crossing-words'
import { type Tongue, tongueOf } from '../words/tongue'
import { formatBearingDeg } from '../words/units'
import { lineMarks } from './line-marks'
import type { BearingBasis, PaperSource } from './paper-source'

/** A place at which the crew stops: all that is there, and what it does. */
export interface LineStop {
  readonly kinds: readonly StripMarkKind[]
  readonly name: string
  /** The tag's own number, or nothing. */
  readonly tag: string
  readonly isTestPoint: boolean
  readonly groundM: number
  readonly wireM: number
  readonly position: Position
  readonly does: readonly string[]
}

interface Part extends Omit<LineStop, 'kinds' | 'does' | 'isTestPoint'> {
  readonly kind: StripMarkKind
  readonly isTestPoint?: boolean | undefined
  readonly does: string
}

/** What is nearer to the last stop than this is done there, m of ground. */
const ONE_STOP_M = 1

/** Every stop of a line in walking order. */
export function lineStops(
  source: PaperSource,
  line: Line,
  measured: ReportLine,
  bearing: BearingBasis,
): readonly LineStop[] {
  const say = tongueOf(source.plan, source.system)
  const parts = [
    ...vertexParts(source, line, measured, bearing, say),
    ...markParts(source, line, measured),
    ...crossingParts(source, line, measured, say),
  ].toSorted((a, b) => a.groundM - b.groundM || a.wireM - b.wireM)
  const stops: Part[][] = []
  for (const part of parts) {
    const last = stops.at(-1)
    if (last && part.groundM - last[0]!.groundM < ONE_STOP_M) last.push(part)
    else stops.push([part])
  }
  return stops.map((own) => {
    const main = own.find(({ kind }) => kind === 'station' || kind === 'bend') ?? own[0]!
    const texts = (pick: (part: Part) => string) => [...new Set(own.map(pick).filter(Boolean))]
    return {
      ...main,
      kinds: [...new Set(own.map(({ kind }) => kind))],
      name: texts(({ name }) => name).join(', '),
      tag: texts(({ tag }) => tag).join(', '),
      isTestPoint: own.some(({ isTestPoint }) => isTestPoint),
      does: texts(({ does }) => does),
      // At the far end the last tail belongs to what is measured.
      wireM: Math.max(...own.map(({ wireM }) => wireM)),
    }
  })
}

function vertexParts(
  { plan }: PaperSource,
  line: Line,
  measured: ReportLine,
  bearing: BearingBasis,
  say: Tongue,
): readonly Part[] {
  const last = measured.legs.length
  let runM = 0
  return Array.from({ length: last + 1 }, (_, i) => {
    const leg = measured.legs[i]
    const groundM = runM
    runM += leg?.groundM ?? 0
    const note = line.legs[i]?.note?.replace(/[.\s]+$/, '')
    const ahead = leg
      ? `On at ${formatBearingDeg(bearing.of(leg.bearingDeg))} for ${say.length(leg.groundM)}, ${leg.lay}${note ? `: ${note}` : ''}.`
      : ''
    const end = i === 0 ? line.from : line.to
    const tied = i === 0 || i === last ? tieWords(plan, line, end) : ''
    return {
      kind: i === 0 || i === last ? 'station' : 'bend',
      name: i === 0 || i === last ? stationName(plan, end) : `bend ${i}`,
      tag: '',
      groundM,
      wireM: i === last ? measured.wireM : wireMOnLeg(measured, i, 0),
      position: vertexOf(plan, line, i),
      does: [tied, ahead].filter(Boolean).join(' '),
    } as const
  })
}

/** On which posts of the terminal block each pair is tied at an end: `Pair 1 on posts 1, 2.` */
function tieWords(plan: Plan, line: Line, end: StationId): string {
  const own = pairEndsAt(plan, end).filter((each) => each.line === line.id)
  if (line.return === 'earth')
    return own.map(({ posts }) => `Wire on post ${posts[0]}, rod on post ${posts[1]}.`).join(' ')
  return own
    .map(({ pair, posts }) => `${line.pairs > 1 ? `Pair ${pair}` : 'Pair'} on posts ${posts.join(', ')}.`)
    .join(' ')
}

const markParts = (source: PaperSource, line: Line, measured: ReportLine): readonly Part[] =>
  lineMarks(source, line, measured).map(({ name, what, ...mark }) =>
    mark.kind === 'tag'
      ? { ...mark, name: '', tag: name, does: what ? `Tag: ${what}.` : '' }
      : { ...mark, name: `splice ${name}`, tag: '', does: `Splice ${what}.` },
  )

/** Crossings with what is done there, and cautions that have a place, in their own words. */
function crossingParts(
  { plan, report }: PaperSource,
  line: Line,
  measured: ReportLine,
  say: Tongue,
): readonly Part[] {
  const at = (mapM: number) => {
    const { groundM, position } = pointAtMapM(plan, measured, line, mapM)
    return { groundM, wireM: wireMAtGroundM(measured, groundM), position, tag: '' }
  }
  const own = report.cautions.flatMap((caution) =>
    caution.where === line.id && caution.place ? [{ caution, mapM: caution.place.distanceM }] : [],
  )
  const isNear = (mapM: number, distanceM: number) => Math.abs(mapM - distanceM) < ONE_STOP_M / 2
  return [
    ...measured.crossings.map(({ kind, lay, name, distanceM }): Part => {
      const { does } = HAZARDS[kind].at[lay]
      const isCautioned = own.some(({ mapM }) => isNear(mapM, distanceM))
      const words = does && !isCautioned ? `Cross: ${directionWords(does, say)}.` : ''
      return { kind: 'crossing', name: hazardName(name, kind), does: words, ...at(distanceM) }
    }),
    ...own.map(({ caution, mapM }): Part => {
      const name = measured.crossings.some(({ distanceM }) => isNear(mapM, distanceM)) ? '' : 'caution'
      return { kind: 'caution', name, does: `Caution: ${cautionText(caution, say)}`, ...at(mapM) }
    }),
  ]
}

/** Cautions of a line that have no place on it. */
export const cautionsOfLine = (cautions: readonly Caution[], line: Line): readonly Caution[] =>
  cautions.filter(({ where, place }) => where === line.id && !place)
