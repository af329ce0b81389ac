import type { Plan } from '../plan/plan'
import type { Beside } from '../report/beside-report'
import type { Report, ReportCircuit } from '../report/report'
import { cautionText } from './caution-words'
import { lackSentence, remarkSentence } from './circuit-notes'
import { doubtText } from './doubt-words'
import { explanationWords, odditySentence } from './field-words'
import { besideInWords } from './json-outlook'
import { remedyWords } from './remedy-words'
import { tagReason } from './tag-words'
import { tongueOf } from './tongue'
import { loadWords } from './work-words'

/** The report as the command line prints it and its contract has it: beside every code its words, in metric English. */
export function reportInWords(report: Report, plan: Plan, besideOf: (circuit: ReportCircuit) => Beside) {
  const say = tongueOf(plan, 'metric')
  return {
    ...report,
    lines: report.lines.map((line) => ({
      ...line,
      tags: line.tags.map((tag) => ({ ...tag, reasons: tag.reasons.map((why) => tagReason(why, say)) })),
      field: {
        ...line.field,
        oddities: line.field.oddities.map((oddity) => ({
          ...oddity,
          says: odditySentence(oddity, say),
          because: oddity.because.map((why) => explanationWords(why, say)),
        })),
      },
    })),
    circuits: report.circuits.map((circuit) => ({
      ...circuit,
      ...besideInWords(circuit, besideOf(circuit), say),
      missing: circuit.missing.map((lack) => lackSentence(lack, say)),
      notes: circuit.notes.map((remark) => remarkSentence(remark, say)),
      remedies: circuit.remedies.map((remedy) => ({
        what: remedyWords(remedy.changes, plan, plan.circuits.get(circuit.id)!, say),
        ...remedy,
      })),
    })),
    cautions: report.cautions.map((caution) => ({ text: cautionText(caution, say), ...caution })),
    doubts: report.doubts.map((doubt) => ({ text: doubtText(doubt, say), ...doubt })),
    loads: {
      ...report.loads,
      items: report.loads.items.map((item) => ({ what: loadWords(item.thing, say), ...item })),
      shared: report.loads.shared.map((item) => ({ what: loadWords(item.thing, say), ...item })),
    },
  }
}
