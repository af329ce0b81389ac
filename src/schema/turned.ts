/** How a value that a schema let through is taken into the program, and how it is given back to a file. */
export interface Turned {
  readonly take?: (value: unknown) => unknown
  readonly give?: (value: unknown) => unknown
}

export const take = (schema: object, value: unknown): unknown => {
  const { take } = schema as Turned
  return take ? take(value) : value
}

export const give = (schema: object, value: unknown): unknown => {
  const { give } = schema as Turned
  return give ? give(value) : value
}

export const turnsOf = (schema: object): Turned => {
  const { take, give } = schema as Turned
  return { ...(take && { take }), ...(give && { give }) }
}
