import { keyOf } from '../journal/keys'

/** What is selected, as far as others are told of it. */
export type SelectedThing = { readonly kind: string; readonly id: string } | null

/** The selected thing as a key of the journal; empty for none, and for several. */
export const whatIsSelected = (thing: SelectedThing): string =>
  thing && thing.kind !== 'several' ? keyOf(`${thing.kind}s`, thing.id, '') : ''
