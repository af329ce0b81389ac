import type { LineId } from '../../plan/id'
import type { ReportLine } from '../../report/report'
import { effect } from '../../state/steady-effect'
import type { Bench } from '../bench'
import type { Level } from '../view/map-view'
import { showWithin, svgElement } from '../view/svg-element'

/** What hangs along one line: drawn anew only where the line, or something of `from`, is another than before. */
export interface LineMarks {
  readonly from: readonly unknown[]
  readonly draw: () => readonly SVGElement[]
}

interface Drawn {
  readonly group: SVGGElement
  readonly from: readonly unknown[]
}

/** On which levels marks hang, at rest and in hand, and under which group there. */
export interface Hung {
  readonly levels: readonly [standing: Level, inHand: Level]
  readonly under: string
}

const AMONG_SIGNS: Hung = { levels: ['signs', 'signs-moving'], under: 'caution-marks' }

/** Keeps the marks of each line in a group of its own, in step with the report and with the frame of the map. @param marksOf null for a line without any */
export function showLineMarks(
  { store, view, moving }: Bench,
  name: string,
  marksOf: (line: ReportLine, isSelected: boolean) => LineMarks | null,
  { levels, under }: Hung = AMONG_SIGNS,
): () => void {
  const standing = view.addGroup(name, levels[0], under)
  const inHand = view.addGroup(name, levels[1], under)
  const drawn = new Map<LineId, Drawn>()
  const stop = effect(() => {
    const frame = view.frame.value
    const selection = store.selection.value
    const held = moving.value.lines
    const shown = new Set<LineId>()
    for (const line of store.report.value.lines) {
      const isSelected = selection?.kind === 'line' && selection.id === line.id
      const marks = marksOf(line, isSelected)
      if (!marks) continue
      shown.add(line.id)
      const parent = held.has(line.id) ? inHand : standing
      const from = [frame, isSelected, ...marks.from]
      const before = drawn.get(line.id)
      if (before && before.group.parentNode !== parent) parent.append(before.group)
      if (before && before.from.length === from.length && before.from.every((part, i) => part === from[i]))
        continue
      const own = before?.group ?? svgElement('g', {}, parent)
      showWithin(own, marks.draw())
      drawn.set(line.id, { group: own, from })
    }
    for (const [id, { group: old }] of drawn) {
      if (shown.has(id)) continue
      old.remove()
      drawn.delete(id)
    }
  })
  return () => {
    stop()
    standing.remove()
    inHand.remove()
  }
}
