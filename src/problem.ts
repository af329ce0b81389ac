/** Bad input, reported as a value: the user can mend it, the program goes on. */
export interface Problem {
  /** One word for the kind of fault, so that a program can tell faults apart. */
  readonly code: string
  /** What is at fault: a path in a file (`features[3].properties.wire`) or the id of a thing in the plan. */
  readonly at: string
  /** One sentence for the user: what is wrong, and what would be right. */
  readonly message: string
}

/** A value, or every problem found on the way to it. */
export type Result<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] }

export const ok = <T>(value: T): Result<T> => ({ ok: true, value })
export const bad = (...problems: readonly Problem[]): Result<never> => ({ ok: false, problems })
