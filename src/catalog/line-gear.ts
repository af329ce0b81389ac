import { derived, fromMemory, practice, read, type Source } from './sources'

/** What is carried for a line besides its wire. */
export const GEAR_KINDS = ['tag', 'rod', 'lance', 'guy', 'stake', 'weight'] as const
export type GearKind = (typeof GEAR_KINDS)[number]

/** Mass of one, kg, where a plan says nothing else. */
export const GEAR_KG: Readonly<Record<GearKind, number>> = {
  tag: 0.01,
  rod: 2.4,
  lance: 3,
  guy: 0.3,
  stake: 0.4,
  weight: 1,
}

/** Of the tools of a crew, the test set weighs so much, kg, where a plan says nothing else. */
export const TEST_SET_KG = 1.5

/** How many a line takes. */
export const GEAR_PRACTICE = {
  guysAtLance: 2,
  guysAtTenth: 4,
  /** A stake for each guy, and one at the foot of each lance that the wire is tied to. */
  stakesAtFoot: 1,
  /** Ground under water for each weight, m; and one on each bank. */
  weightEveryM: 10,
} as const

export const GEAR_SOURCES: Readonly<Record<string, Source>> = {
  tag: fromMemory('Film or fibre with its tie, from memory.'),
  rod: derived('Steel rod of 16 mm, 1.5 m long: π/4 · 0.016² · 1.5 m³ of 7850 kg/m³.'),
  lance: fromMemory('A lance pole of some 4 m in two parts, from memory.'),
  guy: fromMemory('Some 8 m of cord with its slide, from memory.'),
  stake: fromMemory('Wood, some 0.6 m, from memory.'),
  weight: fromMemory('From memory: a stone of the stream’s bed does as well.'),
  guysAtLance: read(
    'Two guys at each pole, at right angles to the line; every tenth pole four: US Army subcourse SS0440, p. 1-27.',
  ),
  stakesAtFoot: read(
    'The wire is tied at the pole’s top and to a stake at its foot: US Army subcourse SS0440, p. 1-25.',
  ),
  weightEveryM: practice(
    'Submerged wire is weighted, and held on both banks: common practice; how often is an allowance.',
  ),
}
