import {
  drawProfile,
  type FlatProfile,
  type ProfileDrawing,
  stretchWords,
} from '../../figure/profile-drawing'
import type { Line } from '../../plan/plan'
import { type LineProfile, lineProfile } from '../../report/line-profile'
import type { ReportLine } from '../../report/report'
import { STEEP_PCT } from '../../terrain/profile'
import { formatLengthM } from '../../words/units'
import type { Block } from '../layout/block'
import type { PaperSource } from '../paper-source'

const HEIGHT_MM = 34
const LETTER_MM = 3.1

/** The ground under a line as blocks; none where no height is known. */
export function profileBlocks(
  { plan, catalog, ground, system }: PaperSource,
  line: Line,
  measured: ReportLine,
  widthMm: number,
): readonly Block[] {
  const profile = lineProfile(plan, line, measured, catalog.wires.get(line.wire), ground)
  if (!profile) return []
  const drawing = drawProfile(profile, { width: widthMm, height: HEIGHT_MM, letter: LETTER_MM }, system)
  const length = (m: number) => formatLengthM(m, system)
  return [
    {
      kind: 'drawing',
      heightMm: HEIGHT_MM,
      drawing: { kind: 'profile', drawing: flat(drawing), profile },
    },
    {
      kind: 'text',
      text:
        `Profile. ${stretchWords(drawing)}. Climbs ` +
        `${length(profile.ground.climbM)}, falls ${length(profile.ground.descentM)}.${steepWords(profile)}`,
    },
  ]
}

const flat = ({ xOf: _x, atMOf: _at, yOf: _y, ...drawing }: ProfileDrawing): FlatProfile => drawing

function steepWords({ legs }: LineProfile): string {
  const steep = legs.flatMap(({ isSteep }, i) => (isSteep ? [i + 1] : []))
  if (steep.length === 0) return ''
  return ` Steep, ${STEEP_PCT} % or more, and hatched: ${steep.length === 1 ? 'leg' : 'legs'} ${steep.join(', ')}.`
}
