import type { Verdict } from '../budget/rows'

/** Whether a circuit asks for a remedy: it fails or is thin today, or fails in the worst weather. */
export const isAmiss = (circuit: { verdict: Verdict; worst: { verdict: Verdict } }): boolean =>
  circuit.verdict !== 'works' || circuit.worst.verdict === 'fails'
