import type { SourceTally } from '../catalog/source-tally'
import type { ShownSource, SourceKind } from '../catalog/sources'
import { formatCount } from './units'

const KINDS: Readonly<Record<SourceKind, string>> = {
  read: 'read',
  'data-sheet': 'data sheet',
  derived: 'derived',
  practice: 'common practice',
  memory: 'from memory',
  allowance: 'allowance',
}

/** How a figure is known, in a word or two: `data sheet`, `derived, in part from memory`; empty where nobody says. */
export const sourceKind = (source: ShownSource | undefined): string => {
  if (source?.kind === undefined) return ''
  return source.onMemory ? `${KINDS[source.kind]}, in part from memory` : KINDS[source.kind]
}

/** `± 8 %`, or from 50 % on, where ± would say less than nothing, `÷ to × 3`. */
export function spreadText(pct: number): string {
  if (pct < 50) return `± ${Number(pct.toPrecision(2))} %`
  return `÷ or × ${Number((1 + pct / 100).toPrecision(2))}`
}

/** `22 figures: 5 read, 3 from data sheets, 9 derived, 5 allowances; 8 rest on memory.` */
export function tallySentence({ figures, byKind, onMemory, own }: SourceTally): string {
  const parts = [
    [byKind.read, 'read'],
    [byKind['data-sheet'], 'from data sheets'],
    [byKind.derived, 'derived'],
    [byKind.practice, 'common practice'],
    [byKind.memory, 'from memory'],
    [byKind.allowance, 'allowances'],
    [own, 'of your own'],
  ] as const
  const list = parts.filter(([count]) => count > 0).map(([count, what]) => `${count} ${what}`)
  const rest = onMemory > byKind.memory ? `; ${onMemory} rest on memory in all` : ''
  return `${formatCount(figures, 'figure')}: ${list.join(', ')}${rest}.`
}
