import type { HazardKind, Lay } from '../plan/plan'

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

/** Hazards as a person reads them. */
export const HAZARD_WORDS: Readonly<Record<HazardKind, string>> = {
  road: 'road',
  track: 'track',
  railway: 'railway',
  water: 'water',
  'power-line': 'power line',
  'keep-out': 'keep-out area',
}
