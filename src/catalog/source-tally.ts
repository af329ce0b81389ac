import { restsOnMemory, SOURCE_KINDS, type SourceKind, type Sources, sourceAt } from './sources'

/** What a wire, a set and a supply have in common here. */
interface Sourced {
  readonly sources?: Sources
}

const NO_FIGURES = new Set(['sources', 'spread'])

/** Names of all figures of an entry, with a dot where they lie deeper: `ringer.ohms`; a list counts as one. */
export function figuresOf(entry: object, path = ''): readonly string[] {
  return Object.entries(entry).flatMap(([name, value]) => {
    if (path === '' && NO_FIGURES.has(name)) return []
    if (typeof value === 'number' || Array.isArray(value)) return [path + name]
    return typeof value === 'object' && value !== null ? figuresOf(value, `${path}${name}.`) : []
  })
}

/** How many figures of some entries are known in each way. */
export interface SourceTally {
  readonly figures: number
  readonly byKind: Readonly<Record<SourceKind, number>>
  /** From memory, or derived from what is. */
  readonly onMemory: number
  /** With no source at all, or one of no known kind: what a person typed in. */
  readonly own: number
}

export function tallyOf(entries: readonly (object & Sourced)[]): SourceTally {
  const byKind = Object.fromEntries(SOURCE_KINDS.map((kind) => [kind, 0])) as Record<SourceKind, number>
  let [figures, onMemory, own] = [0, 0, 0]
  for (const entry of entries) {
    for (const figure of figuresOf(entry)) {
      figures++
      const source = sourceAt(entry.sources, figure)
      if (source?.kind === undefined) own++
      else {
        byKind[source.kind]++
        if (restsOnMemory(source)) onMemory++
      }
    }
  }
  return { figures, byKind, onMemory, own }
}
