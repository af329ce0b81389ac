import type { Lay } from '../plan/plan'

/** Lays as a person reads them. */
export const LAY_WORDS: Readonly<Record<Lay, string>> = {
  surface: 'surface',
  overhead: 'overhead',
  buried: 'buried',
  water: 'under water',
}

/** Letters that stand for them on maps and papers; they are also the keys that set them. */
export const LAY_LETTERS: Readonly<Record<Lay, string>> = {
  surface: 'S',
  overhead: 'O',
  buried: 'B',
  water: 'W',
}
