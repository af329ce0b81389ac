import type { Ring } from '../plan/ring-code'

/** `short, long, long`. */
export const ringWords = (code: readonly Ring[]): string => code.join(', ')
