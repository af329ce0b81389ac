import type { LineTag, TagReason } from '../measure/line-tags'
import type { Plan } from '../plan/plan'
import type { Report } from '../report/report'

/** Letters of a name that papers print: the head of a sheet would take more lines for one of 10,000 than the sheet has. */
const MOST_LETTERS = 120

const printable = (name: string): string =>
  // A letter of two halves is not cut between them.
  name.length > MOST_LETTERS ? `${name.slice(0, MOST_LETTERS).replace(/[\ud800-\udbff]$/, '')}…` : name

const named = <K, T extends { readonly name: string }>(things: ReadonlyMap<K, T>): ReadonlyMap<K, T> =>
  [...things.values()].every(({ name }) => name.length <= MOST_LETTERS)
    ? things
    : new Map([...things].map(([id, thing]) => [id, { ...thing, name: printable(thing.name) }]))

const printableReasons = ([first, ...others]: LineTag['reasons']): LineTag['reasons'] => {
  const cut = (reason: TagReason): TagReason =>
    reason.code === 'crossing' ? { ...reason, name: printable(reason.name) } : reason
  return [cut(first), ...others.map(cut)]
}

/** Plan and report with names that a sheet can hold: what is longer than 120 letters is cut, with a mark that it is. */
export function withPrintableNames<T extends { readonly plan: Plan; readonly report: Report }>(source: T): T {
  const { plan, report } = source
  return {
    ...source,
    plan: {
      ...plan,
      title: printable(plan.title),
      stations: named(plan.stations),
      hazards: named(plan.hazards),
      circuits: named(plan.circuits),
    },
    report: {
      ...report,
      title: printable(report.title),
      lines: report.lines.map((line) => ({
        ...line,
        name: printable(line.name),
        crossings: line.crossings.map((crossing) => ({ ...crossing, name: printable(crossing.name) })),
        tags: line.tags.map((tag) => ({ ...tag, reasons: printableReasons(tag.reasons) })),
      })),
      circuits: report.circuits.map((circuit) => ({ ...circuit, name: printable(circuit.name) })),
    },
  }
}
