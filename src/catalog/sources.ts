/**
 * Where each quantity of an entry comes from: a published work, the words "from memory", or "derived: how".
 * Keys are the names of the quantities, with a dot where they lie deeper (`ringer.ohms`).
 */
export type Sources = Readonly<Record<string, string>>
