import { pointAtWireM } from '../../measure/place-on-line'
import type { Line } from '../../plan/plan'
import type { ReportLine } from '../../report/report'
import { type UnitSystem, unitOf } from '../../words/units'
import type { Table } from '../layout/table'
import { lineNumber } from '../line-marks'
import type { PaperSource } from '../paper-source'

/** What each spool of a line was used for before it comes to it: by spool, the wire already cut, m, and from which lines. */
function cutBefore({ report }: PaperSource, line: Line) {
  const used = new Map<string, { cutM: number; lines: Set<Line['id']> }>()
  for (const { id, pieces } of report.lines) {
    if (id === line.id) break
    for (const { spool, cutM } of pieces) {
      const before = used.get(spool) ?? { cutM: 0, lines: new Set() }
      before.cutM += cutM
      before.lines.add(id)
      used.set(spool, before)
    }
  }
  return used
}

/** The line spool by spool: which pair, whether part of it is used, from where to where its wire lies, and what is left on it. */
export function lineSpoolTable(source: PaperSource, line: Line, measured: ReportLine): Table {
  const { plan, report, system } = source
  const unit = unitOf('lengthM', system)
  const lengthOf = new Map(
    report.spools.flatMap(({ used }) => used.map(({ spool, lengthM }) => [spool, lengthM])),
  )
  const used = cutBefore(source, line)
  const laidM = new Map<number, number>()
  const groundAt = (wireM: number) =>
    Math.round(unit.fromSi(pointAtWireM(plan, measured, line, wireM).groundM))
  return {
    isTight: true,
    isClose: true,
    isUntitled: true,
    title: 'Spool by spool',
    columns: [
      { head: 'Pair', share: 9 },
      { head: 'Spool', share: 14 },
      { head: 'Is it full?', share: 46 },
      { head: `On it ${unit.sign}`, share: 18 },
      { head: `Takes ${unit.sign}`, share: 18 },
      { head: `At run ${unit.sign}`, share: 30 },
      { head: `Left ${unit.sign}`, share: 16 },
    ],
    rows: measured.pieces.map(({ pair, spool, wireM, cutM }) => {
      const before = used.get(spool) ?? { cutM: 0, lines: new Set<Line['id']>() }
      const onItM = (lengthOf.get(spool) ?? 0) - before.cutM
      const startM = laidM.get(pair) ?? 0
      laidM.set(pair, startM + wireM)
      used.set(spool, { cutM: before.cutM + cutM, lines: new Set([...before.lines, line.id]) })
      const numbers = [...before.lines].map((id) => lineNumber(source, id))
      return [
        pair + 1,
        spool,
        numbers.length > 0 ? `part used, by line ${numbers.join(', ')}` : 'full',
        unit.fromSi(onItM),
        unit.fromSi(cutM),
        `${groundAt(startM)} – ${groundAt(startM + wireM)}`,
        unit.fromSi(onItM - cutM),
      ]
    }),
  }
}

/** The same in a sentence, for a line of many spools: those that are alike together, each with the runs between which it lies and what is left on it. */
export function spoolWords({ rows }: Table, system: UnitSystem): string {
  const { sign } = unitOf('lengthM', system)
  const groups = new Map<string, string[]>()
  for (const [pair, spool, full, onIt, , lies, left] of rows) {
    const group = `Pair ${pair}, ${full}, ${Number(onIt).toFixed(0)} ${sign} on it`
    const rest = Math.round(Number(left)) > 0 ? ` (${Number(left).toFixed(0)} left)` : ''
    groups.set(group, [...(groups.get(group) ?? []), `${spool} at ${lies}${rest}`])
  }
  return `Spools by run, ${sign}. ${[...groups].map(([group, own]) => `${group}: ${own.join(', ')}.`).join(' ')}`
}
