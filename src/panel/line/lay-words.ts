import type { Lay } from '../../plan/plan'

/** Lays as a person reads them. */
export const LAY_WORDS: Readonly<Record<Lay, string>> = {
  surface: 'surface',
  overhead: 'overhead',
  buried: 'buried',
  water: 'under water',
}
