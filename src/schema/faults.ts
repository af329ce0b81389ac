import type { Problem } from '../problem'
import { valueWords } from './limit'
import type { KnownIds } from './plain-values'
import { MOST_FAULTS, type Schema } from './schema'

/** The place of a member: `plan.note`, or `sets["Hut 3"]` where its name is not a plain word. */
export function placeOf(at: string, name: string): string {
  if (!/^[A-Za-z_$][\w$-]{0,60}$/.test(name)) return `${at}[${valueWords(name)}]`
  return at ? `${at}.${name}` : name
}

/**
 * Every fault of a value, each with its place and its mend, as far as they are told at all.
 *
 * @param known what its references may name
 */
export function faultsOf(schema: Schema, value: unknown, at: string, known?: KnownIds): readonly Problem[] {
  const config: object = { known }
  const { issues } = schema['~run']({ value }, config)
  if (!issues) return []
  return issues.slice(0, MOST_FAULTS + 1).map(({ message, path }) => {
    const [code = '', ...sentence] = message.split(' ')
    const place = (path ?? []).reduce(
      (before, { key }) => (typeof key === 'number' ? `${before}[${key}]` : placeOf(before, String(key))),
      at,
    )
    return { code, at: place, message: sentence.join(' ') }
  })
}
