import { wireMOnLeg } from '../../measure/along'
import type { Lay, Line, Plan } from '../../plan/plan'
import {
  formatBearingDeg,
  formatLengthM,
  formatOhms,
  lengthUnit,
  type UnitSystem,
} from '../../report/quantity-text'
import type { ReportLine } from '../../report/report'
import type { Table } from '../layout/table'
import { spliceMarks } from '../line-marks'
import { loopOhmsAt } from './loop-along'

export const LAY_NAMES: Readonly<Record<Lay, string>> = {
  surface: 'on the ground',
  overhead: 'overhead',
  buried: 'buried',
  water: 'under water',
}

/** An empty box to tick with a pencil. */
export const TICK_BOX = '☐'

/** One row a leg, in the order in which the crew walks the line. */
export function legTable(plan: Plan, line: Line, measured: ReportLine, system: UnitSystem): Table {
  const unit = lengthUnit(system)
  const nameOf = (id: Line['from']) => plan.stations.get(id)?.name || id
  const ends = [nameOf(line.from), ...line.bends.map((_, i) => `bend ${i + 1}`), nameOf(line.to)]
  const splices = spliceMarks(plan, line, measured)
  const lastLeg = measured.legs.length - 1

  let runningM = 0
  const rows = measured.legs.map((leg, i) => {
    runningM += leg.groundM
    const wireM = i === lastLeg ? measured.wireM : wireMOnLeg(measured, i, 1)
    const ohms = loopOhmsAt(line, measured, wireM)
    const atEnd = [
      ...splices
        .filter((splice) => splice.legIndex === i)
        .map(({ name, pair, groundM }) => {
          const which = line.pairs > 1 ? `, pair ${pair + 1}` : ''
          return `splice ${name}${which} at ${formatLengthM(groundM, system)}`
        }),
      ...(ohms === undefined ? [] : [`loop ${formatOhms(ohms)}`]),
    ]
    return [
      i + 1,
      ends[i]!,
      ends[i + 1]!,
      leg.bearingDeg,
      unit.of(leg.groundM),
      unit.of(runningM),
      LAY_NAMES[leg.lay],
      unit.of(wireM),
      line.legs[i]?.note ?? '',
      atEnd.join(' · '),
      TICK_BOX,
    ]
  })
  return {
    title: 'Legs',
    columns: [
      { head: 'Leg', share: 9 },
      { head: 'From', share: 22 },
      { head: 'To', share: 22 },
      { head: 'True bearing', share: 17, show: formatBearingDeg },
      { head: `Ground ${unit.symbol}`, share: 17 },
      { head: `Run ${unit.symbol}`, share: 15 },
      { head: 'Lay', share: 22 },
      { head: `Wire run ${unit.symbol}`, share: 16 },
      { head: 'Landmark', share: 24 },
      { head: 'At the end', share: 36 },
      { head: 'Done', share: 13 },
    ],
    rows,
  }
}
