import { readFileSync } from 'node:fs'
import { parsePlan } from '../../src/files/parse-plan'
import type { Plan } from '../../src/plan/plan'

/** A small net at an invented quarry, as the text of its file: a ring of three lines, two circuits, members of other programs. */
export const QUARRY_TEXT = readFileSync(new URL('quarry-net.plan.geojson', import.meta.url), 'utf8')

/** Parses what must be sound. */
export function planOf(text: string): Plan {
  const result = parsePlan(text)
  if (!result.ok) throw new Error(JSON.stringify(result.problems, null, 1))
  return result.value
}

export const quarryNet = (): Plan => planOf(QUARRY_TEXT)
