import { DONE_SIGNS } from '../../figure/legend'
import { drawStrip } from '../../figure/line-strip'
import type { StripLine } from '../../figure/strip'
import { isolated } from '../../isolated'
import { pointAtMapM, pointAtWireM, wireMAtGroundM } from '../../measure/place-on-line'
import type { Line } from '../../plan/plan'
import { lineProfile } from '../../report/line-profile'
import type { ReportLine } from '../../report/report'
import { formatLengthM, formatRunM, unitOf } from '../../words/units'
import type { Block } from '../layout/block'
import type { LineStop } from '../line-stops'
import type { PaperSource } from '../paper-source'
import type { LineParts } from './line-parts'

/** A strip holds no more stops than this, or its marks run into one another. */
const MOST_STOPS = 40
/** Nor more ground, m: a reading is to be told to a few paces. */
const MOST_GROUND_M = 8000

/** A line as its strip is drawn from: scales of a pair only, for an earth return reads its electrodes. */
function stripLine(
  source: PaperSource,
  line: Line,
  measured: ReportLine,
  stops: readonly LineStop[],
): StripLine {
  const { plan, catalog, ground, system } = source
  const wire = catalog.wires.get(line.wire)
  const unit = unitOf(system === 'us' || measured.groundM < 10_000 ? 'lengthM' : 'lengthKm', system)
  const profile = lineProfile(plan, line, measured, wire, ground)
  const alongGround = (mapM: number) => pointAtMapM(plan, measured, line, mapM).groundM
  const groundAt = (wireM: number) => pointAtWireM(plan, measured, line, wireM).groundM
  let runM = 0
  const nanoF = (perKm: number) => (perKm * measured.wireM) / 1000
  return {
    groundM: measured.groundM,
    wireM: measured.wireM,
    legs: measured.legs.map(({ lay, groundM }) => {
      const fromM = runM
      runM += groundM
      return { lay, fromM, toM: runM }
    }),
    done: DONE_SIGNS.flatMap(([sign]) =>
      measured.field.done[sign].map(({ fromM, toM }) => ({
        sign,
        fromM: groundAt(fromM),
        toM: groundAt(toM),
      })),
    ),
    marks: stops.flatMap(({ kinds, groundM, name, tag, isTestPoint }) =>
      kinds.map((kind) => ({
        ...{ kind, groundM, isTestPoint },
        name: kind === 'tag' ? tag : kind === 'caution' ? '' : name,
      })),
    ),
    distance: { name: unit.sign, perM: unit.fromSi(1) },
    scales:
      line.return === 'earth' || !wire
        ? []
        : [
            { name: 'Ω loop', total: measured.loopOhms },
            { name: 'nF dry', total: nanoF(wire.nanoFPerKm) },
            { name: 'nF wet', total: nanoF(wire.wetNanoFPerKm ?? wire.nanoFPerKm) },
          ],
    wireAt: (groundM) => wireMAtGroundM(measured, groundM),
    groundAt,
    ground: (profile?.ground.samples ?? []).flatMap(({ distanceM, heightM }) =>
      heightM === undefined ? [] : [[alongGround(distanceM), heightM] as const],
    ),
    hung: (profile?.hung ?? []).map((wires) =>
      wires.map(({ atM, heightM }) => [alongGround(atM), heightM] as const),
    ),
    heightText: (heightM) => formatLengthM(heightM, system),
  }
}

/** The line drawn straight, in as many stretches as it takes. */
export function stripDrawings(
  source: PaperSource,
  { line, measured, stops }: Pick<LineParts, 'line' | 'measured' | 'stops'>,
  widthMm: number,
): readonly Block[] {
  const drawn = stripLine(source, line, measured, stops)
  const count = Math.max(1, Math.ceil(stops.length / MOST_STOPS), Math.ceil(measured.groundM / MOST_GROUND_M))
  const name = `Line ${isolated(measured.name)}`
  const at = (i: number) => (measured.groundM * i) / count
  const match = (i: number) => `match ${String.fromCharCode(64 + i)}, ${formatRunM(at(i), source.system)} out`
  return Array.from({ length: count }, (_, i): Block => {
    const stretch = {
      fromM: at(i),
      toM: at(i + 1),
      ...(i > 0 && { from: match(i) }),
      ...(i < count - 1 && { to: match(i + 1) }),
    }
    const drawing = drawStrip(drawn, stretch, widthMm)
    return { kind: 'drawing', heightMm: drawing.heightMm, drawing: { kind: 'strip', drawing, name } }
  })
}

/** How a reading is laid on the strip. */
export const readingWords = (line: Line): string =>
  line.return === 'earth'
    ? 'Earth return: what a meter reads hangs on the rods, so that there is no scale of it here.'
    : 'A fault lies straight above what a meter at the start reads: Ω for a short; nF, far end open and sets off, for a break.'
