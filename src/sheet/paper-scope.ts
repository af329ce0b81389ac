import { linesByCrew } from '../materials/share-lines'
import type { CircuitId, LineId } from '../plan/id'
import { lineNumber, type Plan } from '../plan/plan'
import type { Report, ReportCircuit, ReportLine } from '../report/report'
import type { Tongue } from '../words/tongue'

/** What papers are made for: the whole net, one line, the lines of one circuit, or the lines of one crew (from 0). */
export type PaperScope =
  | { readonly kind: 'net' }
  | { readonly kind: 'line'; readonly line: LineId }
  | { readonly kind: 'circuit'; readonly circuit: CircuitId }
  | { readonly kind: 'crew'; readonly crew: number }

export const WHOLE_NET: PaperScope = { kind: 'net' }

interface Scoped {
  readonly plan: Plan
  readonly report: Report
  readonly scope: PaperScope
}

function lineIds({ plan, report, scope }: Scoped): ReadonlySet<string> {
  switch (scope.kind) {
    case 'net':
      return new Set(plan.lines.keys())
    case 'line':
      return new Set([scope.line])
    case 'circuit':
      return new Set(plan.circuits.get(scope.circuit)?.lines ?? [])
    case 'crew':
      return new Set(linesByCrew(report.hours)[scope.crew] ?? [])
  }
}

/** The lines that papers are made for, in the order of the plan. */
export function linesIn(scoped: Scoped): readonly ReportLine[] {
  const wanted = lineIds(scoped)
  return scoped.report.lines.filter(({ id }) => wanted.has(id))
}

/** The circuits that papers are made for: the one that is asked for, or those on any of the lines. */
export function circuitsIn(scoped: Scoped): readonly ReportCircuit[] {
  const { plan, report, scope } = scoped
  if (scope.kind === 'net') return report.circuits
  if (scope.kind === 'circuit') return report.circuits.filter(({ id }) => id === scope.circuit)
  const wanted = lineIds(scoped)
  return report.circuits.filter(({ id }) => plan.circuits.get(id)?.lines.some((line) => wanted.has(line)))
}

/** Everything that papers can be made for, each with its words. */
export function scopesOf(
  plan: Plan,
  { circuits, hours }: Report,
  say: Tongue,
): readonly { readonly words: string; readonly scope: PaperScope }[] {
  const crews = hours.crews > 1 ? Array.from({ length: hours.crews }, (_, crew) => crew) : []
  return [
    { words: 'The whole net', scope: WHOLE_NET },
    ...crews.map((crew) => ({ words: `Crew ${crew + 1}`, scope: { kind: 'crew', crew } as const })),
    ...circuits.map(({ id, name }) => ({ words: name, scope: { kind: 'circuit', circuit: id } as const })),
    ...[...plan.lines.keys()].map((line) => ({
      words: `Line ${lineNumber(plan, line)}: ${say.name(line)}`,
      scope: { kind: 'line', line } as const,
    })),
  ]
}
