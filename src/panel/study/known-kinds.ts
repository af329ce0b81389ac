interface Answer {
  readonly value: string
  readonly text: string
}

interface Kind {
  readonly text: string
  /** What is typed, with its unit. */
  readonly figures: readonly string[]
  /** What did happen, or did not: the first is taken until another is chosen. */
  readonly answers?: readonly Answer[]
  /** Where it is: at a station alone, between two of them, between a place and the end that is looked to, on a stretch, or as a record has it. */
  readonly where: 'alone' | 'between' | 'meter' | 'meter-at-tags' | 'stretch' | 'record'
}

const answers = (words: Readonly<Record<string, string>>): readonly Answer[] =>
  Object.entries(words).map(([value, text]) => ({ value, text }))

/** What can be known, in the order in which a crew learns it. */
export const KNOWN_KINDS = {
  rings: {
    text: 'Who rings whom',
    figures: [],
    answers: answers({ no: 'does not ring', yes: 'rings' }),
    where: 'between',
  },
  hears: {
    text: 'Who hears whom',
    figures: [],
    answers: answers({ no: 'is not heard', yes: 'is heard' }),
    where: 'between',
  },
  crank: {
    text: 'How the crank turns',
    figures: [],
    answers: answers({ light: 'light', heavy: 'heavy', 'as-ever': 'as ever' }),
    where: 'alone',
  },
  stray: {
    text: 'Another circuit comes through',
    figures: [],
    answers: answers({ heard: 'is heard', rings: 'rings the bell', none: 'nothing of it' }),
    where: 'alone',
  },
  sound: { text: 'A stretch found sound', figures: [], where: 'stretch' },
  record: { text: 'What was read on the walk', figures: [], where: 'record' },
  open: { text: 'Ohms, far end open', figures: ['Ohms read, Ω'], where: 'meter-at-tags' },
  short: { text: 'Ohms, far end joined', figures: ['Ohms read, Ω'], where: 'meter-at-tags' },
  kOhms: { text: 'Insulation, far end open', figures: ['Read, kΩ'], where: 'meter-at-tags' },
  earthA: { text: 'Wire a to the earth, far end open', figures: ['Read, kΩ'], where: 'meter-at-tags' },
  earthB: { text: 'Wire b to the earth, far end open', figures: ['Read, kΩ'], where: 'meter-at-tags' },
  nanoF: { text: 'Capacitance, far end open', figures: ['Read, nF'], where: 'meter-at-tags' },
  murray: {
    text: 'Murray bridge',
    figures: ['Arm at the faulty wire', 'Arm at the good wire'],
    where: 'meter',
  },
  varley: { text: 'Varley bridge', figures: ['Rheostat, Ω', 'Loop read, Ω, if taken'], where: 'meter' },
  echo: {
    text: 'Echo of a pulse',
    figures: ['There and back, ns'],
    answers: answers({ '': 'swing not seen', up: 'swings up', down: 'swings down' }),
    where: 'meter-at-tags',
  },
} as const satisfies Readonly<Record<string, Kind>>

export type KnownKind = keyof typeof KNOWN_KINDS

export const kindOf = (kind: KnownKind): Kind => KNOWN_KINDS[kind]
