import { type Held, recordOf, text } from '../schema/schema'

/**
 * Where each quantity of an entry comes from: a published work, the words "from memory", or "derived: how".
 * Keys are the names of the quantities, with a dot where they lie deeper (`ringer.ohms`).
 */
export const SOURCES = recordOf('The member "sources"', text('The name of a quantity'), text('A source'))

export type Sources = Held<typeof SOURCES>
