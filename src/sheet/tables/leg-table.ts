import { hazardName } from '../../hazard/kinds'
import { wireMOnLeg } from '../../measure/place-on-line'
import type { Line } from '../../plan/plan'
import { stationName } from '../../plan/plan'
import type { ReportLine } from '../../report/report'
import { formatLengthM, type Unit, unitOf } from '../../words/units'
import { type Table, TICK_BOX } from '../layout/table'
import { type LineMark, lineMarks } from '../line-marks'
import type { BearingBasis, PaperSource } from '../paper-source'
import { loopOhmsAt } from './loop-ohms-at'

/** `tags 1/1 to 1/3 at 0, 5, 262 m`: what hangs where, in few words; why stands on the tag list. */
function tagsText(tags: readonly LineMark[], unit: Unit): string {
  const [first, last] = [tags[0], tags.at(-1)]
  if (!first || !last) return ''
  const names = tags.length === 1 ? `tag ${first.name}` : `tags ${first.name} to ${last.name}`
  return `${names} at ${tags.map(({ groundM }) => unit.fromSi(groundM).toFixed(0)).join(', ')}\u00a0${unit.sign}`
}

/** One row a leg, in the order in which the crew walks the line. */
export function legTable(
  source: PaperSource,
  line: Line,
  measured: ReportLine,
  bearing: BearingBasis,
): Table {
  const { plan, system } = source
  const unit = unitOf('lengthM', system)
  const nameOf = (id: Line['from']) => stationName(plan, id)
  const ends = [...line.bends.map((_, i) => `bend ${i + 1}`), nameOf(line.to)]
  const marks = lineMarks(source, line, measured)
  const lastLeg = measured.legs.length - 1

  let runM = 0
  const rows = measured.legs.map((leg, i) => {
    runM += leg.groundM
    const wireM = i === lastLeg ? measured.wireM : wireMOnLeg(measured, i, 1)
    const ohms = loopOhmsAt(line, measured, wireM)
    const here = marks.filter((mark) => mark.legIndex === i)
    const onTheWay = [
      line.legs[i]?.note ?? '',
      ...measured.crossings
        .filter((crossing) => crossing.legIndex === i)
        .map(({ kind, name }) => `crosses ${hazardName(name, kind)}`),
      ...here
        .filter(({ kind }) => kind === 'splice')
        .map(({ name, what, groundM }) => `splice ${name} ${what} at ${formatLengthM(groundM, system)}`),
      tagsText(
        here.filter(({ kind }) => kind === 'tag'),
        unit,
      ),
    ]
    return [
      i + 1,
      ends[i]!,
      bearing.of(leg.bearingDeg),
      unit.fromSi(leg.groundM),
      unit.fromSi(runM),
      leg.lay,
      unit.fromSi(wireM),
      onTheWay.filter(Boolean).join(' · '),
      ohms ?? null,
      TICK_BOX,
    ]
  })
  return {
    isDense: true,
    title: 'Legs, as they are walked; runs and loop are those at the end of each',
    columns: [
      { head: 'Leg', share: 11 },
      { head: 'To', share: 24 },
      { head: `Bearing ${bearing.word}`, share: 21, show: 'bearing' },
      { head: `Ground ${unit.sign}`, share: 19 },
      { head: `Run ${unit.sign}`, share: 14 },
      { head: 'Lay', share: 19 },
      { head: `Wire run ${unit.sign}`, share: 17 },
      { head: 'On the way', share: 75 },
      { head: 'Loop Ω', share: 17, show: 1 },
      { head: 'Done', share: 13 },
    ],
    rows,
  }
}
