import { METRES_PER_FOOT } from '../units'

/** A distance to keep, by one rule or practice. */
export interface Clearance {
  readonly id: string
  readonly what: string
  readonly metres: number
  readonly rule: 'military' | 'civil'
  readonly source: string
}

const feet = (n: number) => n * METRES_PER_FOOT

/** Least heights and distances. The local code and the owner's permit govern, and they change by edition and place. */
export const CLEARANCES: readonly Clearance[] = [
  {
    id: 'secondary-road',
    what: 'Height over a secondary road or track',
    metres: feet(14),
    rule: 'military',
    source: 'US Army Signal subcourse SS0440, p. 1-25: 14 ft',
  },
  {
    id: 'primary-road',
    what: 'Height over a primary road',
    metres: feet(18),
    rule: 'military',
    source: 'US Army Signal subcourse SS0440, p. 1-25: 18 ft',
  },
  {
    id: 'road-civil',
    what: 'Height of a communication cable over roads and other ground that vehicles cross',
    metres: feet(15.5),
    rule: 'civil',
    source: 'NESC Rule 232 as a published summary gives it: 15.5 ft at worst sag',
  },
  {
    id: 'railway-civil',
    what: 'Height over railway tracks',
    metres: feet(23.5),
    rule: 'civil',
    source: 'NESC Rule 232, from memory: 23.5 ft',
  },
  {
    id: 'railway-go-95',
    what: 'Height of a communication wire over tracks that carry freight cars',
    metres: feet(25),
    rule: 'civil',
    source: 'GO 95 (California), rule 37, table 1, case 1: 25 ft',
  },
  {
    id: 'field-civil',
    what: 'Height over cultivated, grazing, forest or orchard land and other ground that machines cross',
    metres: feet(15.5),
    rule: 'civil',
    source:
      'NESC Rule 232 as a published summary gives it: 15.5 ft at worst sag; GO 95 (California), table 1, has 15 ft',
  },
  {
    id: 'footpath-go-95',
    what: 'Height where only people on foot can pass',
    metres: feet(10),
    rule: 'civil',
    source: 'GO 95 (California), rule 37, table 1: 10 ft for communication conductors',
  },
  {
    id: 'water-civil',
    what: 'Height over water on which nobody sails',
    metres: feet(14),
    rule: 'civil',
    source: 'NESC Rule 232, from memory: 14 ft; far more where boats have masts',
  },
  {
    id: 'footpath-civil',
    what: 'Height where only people walk',
    metres: feet(9.5),
    rule: 'civil',
    source: 'NESC as published summaries give it: 9.5 to 10 ft',
  },
  {
    id: 'roof-civil',
    what: 'Height over a roof',
    metres: feet(8),
    rule: 'civil',
    source: 'NEC 800.44(B), as quoted: 8 ft, with exceptions',
  },
  {
    id: 'power-pole-civil',
    what: 'Below power wires on a shared pole',
    metres: feet(40 / 12),
    rule: 'civil',
    source: 'NESC Rules 235 and 238 as published summaries give them: 40 in',
  },
  {
    id: 'power-approach',
    what: 'Between people with wire in hand and a power line of up to 50 kV',
    metres: feet(10),
    rule: 'civil',
    source: 'OSHA 1910.333(c), from memory: 10 ft, and 4 in more for each 10 kV above',
  },
  {
    id: 'lightning-conductor',
    what: 'From a lightning conductor',
    metres: feet(6),
    rule: 'civil',
    source: 'NEC 800.53, as quoted: 6 ft where practicable',
  },
]
