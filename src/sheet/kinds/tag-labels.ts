import type { Box } from '../../figure/geometry'
import { isolated } from '../../isolated'
import { circuitName, type Line } from '../../plan/plan'
import type { ReportLine } from '../../report/report'
import { tongueOf } from '../../words/tongue'
import { formatLengthM } from '../../words/units'
import type { Block } from '../layout/block'
import type { PaperSize } from '../layout/paper-size'
import { lineNumber, tagMarks } from '../line-marks'
import { linesIn } from '../paper-scope'
import type { PaperSource } from '../paper-source'
import { dealtEvenly } from '../scene/card-sheets'
import { cutLines, cutMarks } from '../scene/cut-marks'
import { LABEL_FORMATS, type LabelFormat } from '../scene/label-format'
import { keyLabel, type TagWords, tagLabel } from '../scene/tag-label'

/** The tags of the lines as sheets of labels, one tag a label; the first label of each sheet is its key. */
export function tagLabels(source: PaperSource, page: PaperSize): readonly Block[] {
  const formats = LABEL_FORMATS[page.name]
  const format = formats.find(({ name }) => name === source.labels) ?? formats[0]!
  const tags = linesIn(source).flatMap((measured) => {
    const line = source.plan.lines.get(measured.id)
    return line ? tagsOf(source, line, measured) : []
  })
  if (tags.length === 0) return []
  const perSheet = format.columns * format.rows - 1
  const key = (box: Box) =>
    keyLabel(box, `${isolated(source.plan.title)} · plan\u00a0${source.fingerprint}`, source.date)
  const sheets = Math.ceil(tags.length / perSheet)
  // Where labels meet, a notch must be seen to belong to one of them.
  const isOutlined = format.isCut || format.pitchMm[1] - format.heightMm < 0.1
  return dealtEvenly(tags, sheets).flatMap((some, sheet): readonly Block[] => {
    const own = [key, ...some.map((tag) => (box: Box) => tagLabel(box, tag))]
    const boxes = own.map((_, i) => boxAt(format, i))
    const shapes = [
      ...own.flatMap((label, i) => label(boxes[i]!)),
      ...(isOutlined ? cutLines(boxes) : []),
      ...(format.isCut ? cutMarks(boxes, page) : []),
    ]
    return [
      ...(sheet > 0 ? [{ kind: 'new-sheet' } as const] : []),
      {
        kind: 'drawing',
        heightMm: page.heightMm,
        drawing: {
          kind: 'scene',
          scene: { ...page, label: `Labels for tags, sheet ${sheet + 1} of ${sheets}`, shapes },
        },
      },
    ]
  })
}

function boxAt({ columns, widthMm, heightMm, pitchMm, startMm }: LabelFormat, i: number): Box {
  const left = startMm[0] + (i % columns) * pitchMm[0]
  const top = startMm[1] + Math.floor(i / columns) * pitchMm[1]
  return { left, top, right: left + widthMm, bottom: top + heightMm }
}

function tagsOf(source: PaperSource, line: Line, measured: ReportLine): readonly TagWords[] {
  const { plan, system } = source
  const marks = tagMarks(source, line, measured)
  const circuits = [...plan.circuits.values()].filter(({ lines }) => lines.includes(line.id))
  const pairs = circuits.map((circuit, i) => {
    const name = circuitName(plan, circuit)
    return line.pairs > 1 ? `pair ${i + 1} ${name}` : name
  })
  const wayTo = (from: number, to: number) => {
    const [here, there] = [marks[from], marks[to]]
    return here && there
      ? `${there.name} ${formatLengthM(Math.abs(there.groundM - here.groundM), system)}`
      : ''
  }
  return marks.map(({ name, what }, i) => ({
    lineNumber: lineNumber(source, line.id),
    tagNumber: i + 1,
    name,
    place: what,
    pairs:
      [line.return === 'earth' ? 'one wire and the earth' : '', ...pairs].filter(Boolean).join(', ') ||
      'no circuit yet',
    lineName: tongueOf(plan, system).name(line.id),
    previous: wayTo(i, i - 1),
    next: wayTo(i, i + 1),
  }))
}
