import type { FaultReading } from '../../report/find-fault'
import type { Quantity } from '../../words/units'

/** One figure that a person reads off an instrument. */
export interface ReadingField {
  readonly name: string
  readonly label: string
  readonly quantity: Quantity
  /** May be left empty. */
  readonly optional?: true
}

/** Values by the names of their fields; undefined while a field is empty. */
export type Readings = Readonly<Record<string, number | undefined>>

/** A way to measure: what to do, what to read, and how the engine takes it. */
export interface FaultKind {
  readonly text: string
  readonly how: string
  readonly fields: readonly ReadingField[]
  /** Called when every field that is needed is given. */
  readonly toReading: (values: Readings) => FaultReading
}

const given = (values: Readings, name: string): number => values[name] ?? 0

/** The ways to measure, by the kind of their reading. Common practice; the bridges: Hawkins Electrical Guide, vol. 3 (1914). */
export const FAULT_KINDS: Readonly<Record<FaultReading['kind'], FaultKind>> = {
  short: {
    text: 'Short, from one end',
    how: 'Ohmmeter across the pair at the meter’s station; the far end open.',
    fields: [
      { name: 'ohms', label: 'Loop read', quantity: 'ohm' },
      { name: 'shortOhms', label: 'Ohms of the short, if known', quantity: 'ohm', optional: true },
    ],
    toReading: (values) => ({
      kind: 'short',
      ohms: given(values, 'ohms'),
      shortOhms: given(values, 'shortOhms'),
    }),
  },
  'short-both-ends': {
    text: 'Short, from both ends',
    how: 'Ohmmeter across the pair, first here, then at the far end, the other end open each time. The ohms of the short itself fall out.',
    fields: [
      { name: 'ohms', label: 'Loop read here', quantity: 'ohm' },
      { name: 'farOhms', label: 'Loop read at the far end', quantity: 'ohm' },
    ],
    toReading: (values) => ({
      kind: 'short-both-ends',
      nearOhms: given(values, 'ohms'),
      farOhms: given(values, 'farOhms'),
    }),
  },
  murray: {
    text: 'Wire to earth, Murray',
    how: 'Join the two wires at the far end. One arm of the bridge to the faulty wire, the other to the good one, the battery between bridge and earth; balance.',
    fields: [
      { name: 'faultyArm', label: 'Arm at the faulty wire', quantity: 'ratio' },
      { name: 'goodArm', label: 'Arm at the good wire', quantity: 'ratio' },
    ],
    toReading: (values) => ({
      kind: 'murray',
      faultyArm: given(values, 'faultyArm'),
      goodArm: given(values, 'goodArm'),
    }),
  },
  varley: {
    text: 'Wire to earth, Varley',
    how: 'Join the two wires at the far end. Equal arms, the rheostat in the faulty wire, the battery between bridge and earth; balance.',
    fields: [
      { name: 'rheostatOhms', label: 'Rheostat', quantity: 'ohm' },
      { name: 'loopOhms', label: 'Loop read, far end joined', quantity: 'ohm', optional: true },
    ],
    toReading: (values) => ({
      kind: 'varley',
      rheostatOhms: given(values, 'rheostatOhms'),
      loopOhms: values.loopOhms || undefined,
    }),
  },
  open: {
    text: 'Break, from one end',
    how: 'Capacitance meter across the pair at the meter’s station. How the wire lies changes it: both ends are surer.',
    fields: [{ name: 'nanoF', label: 'Capacitance read', quantity: 'nanoF' }],
    toReading: (values) => ({ kind: 'open', nanoF: given(values, 'nanoF') }),
  },
  'open-both-ends': {
    text: 'Break, from both ends',
    how: 'Capacitance meter across the pair, first here, then at the far end. Only the ratio counts.',
    fields: [
      { name: 'nanoF', label: 'Capacitance read here', quantity: 'nanoF' },
      { name: 'farNanoF', label: 'Capacitance read at the far end', quantity: 'nanoF' },
    ],
    toReading: (values) => ({
      kind: 'open-both-ends',
      nearNanoF: given(values, 'nanoF'),
      farNanoF: given(values, 'farNanoF'),
    }),
  },
}

/** The reading, once all that it needs has been given. */
export function readingOf(kind: FaultReading['kind'], values: Readings): FaultReading | undefined {
  const { fields, toReading } = FAULT_KINDS[kind]
  const complete = fields.every(({ name, optional }) => optional || values[name] !== undefined)
  return complete ? toReading(values) : undefined
}
