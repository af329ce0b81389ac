import { recordsOf, recordsWhere } from '../../plan/field-records'
import type { Plan } from '../../plan/plan'
import { hasPicture, withoutPicture, withPictures } from '../../plan/record-pictures'
import { LIGHT } from '../plan-fingerprint'

/** What a plan leaves behind that goes by a link or by codes. */
export interface LeftBehind {
  readonly plan: Plan
  readonly pictures: number
  readonly tracks: number
}

/** A plan without its pictures and walked tracks, which make it too large for a link or for codes. It bears that, so that they are put back. */
export function lightened(plan: Plan): LeftBehind {
  const records = recordsOf(plan)
  const pictures = records.filter(hasPicture).length
  const left = recordsWhere(plan, ({ kind }) => kind !== 'track')
  const tracks = records.filter(({ kind }) => kind === 'track').length
  if (pictures + tracks === 0) return { plan, pictures, tracks }
  const { field: _, ...rest } = plan
  const field = left.map(withoutPicture)
  const unknown = { ...plan.unknown, plan: { ...plan.unknown?.plan, [LIGHT]: true } }
  return { plan: { ...rest, ...(field.length > 0 && { field }), unknown }, pictures, tracks }
}

/** A plan that came light, with the pictures and tracks that the one on the table has of what both know. */
export function completed(light: Plan, table: Plan): Plan {
  if (light.unknown?.plan?.[LIGHT] !== true) return light
  const { [LIGHT]: _, ...others } = light.unknown.plan
  const here = new Set(recordsOf(light).map(({ id }) => id))
  const back = recordsOf(withPictures(light, table))
  const tracks = recordsOf(table).filter(
    ({ kind, id, line }) => kind === 'track' && !here.has(id) && light.lines.has(line),
  )
  // A track that was taken back is so wherever it goes.
  const gone = new Set(tracks.map(({ id }) => id))
  const undone = recordsOf(table).filter(
    (each) => each.kind === 'undone' && gone.has(each.record) && !here.has(each.id),
  )
  const field = [...back, ...tracks, ...undone]
  return {
    ...light,
    ...(field.length > 0 && { field }),
    unknown: { ...light.unknown, plan: others },
  }
}
