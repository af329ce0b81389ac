import type { LineHours, NetHours } from '../../materials/hours'
import type { LeftToDo } from '../../materials/left-to-do'
import { LOAD_KINDS, type LoadKind, type Loads } from '../../materials/loads'
import { nameIn, tongueOf } from '../../words/tongue'
import { unitOf } from '../../words/units'
import { loadWords } from '../../words/work-words'
import type { Table } from '../layout/table'
import { lineNumber } from '../line-marks'
import type { PaperSource } from '../paper-source'

const KIND_HEADS: Readonly<Record<LoadKind, string>> = {
  wire: 'Wire',
  reel: 'Reels',
  set: 'Sets',
  battery: 'Batteries',
  gear: 'Tags, stakes',
  tools: 'Tools',
}

/** Everything that is carried, with its mass. */
export function loadTable({ plan, system }: PaperSource, loads: Loads): Table {
  const say = tongueOf(plan, system)
  const mass = unitOf('massKg', system)
  return {
    title: 'What is carried',
    columns: [
      { head: 'What', share: 84 },
      { head: 'Count', share: 14 },
      { head: 'Spare', share: 14 },
      { head: `Each ${mass.sign}`, share: 20, show: 1 },
      { head: `Together ${mass.sign}`, share: 24, show: 1 },
    ],
    rows: loads.items.map(({ thing, count, spare, eachKg }) => [
      loadWords(thing, say),
      count,
      spare,
      mass.fromSi(eachKg),
      mass.fromSi(eachKg * count),
    ]),
  }
}

/** The same, summed by kind. */
export function massTable({ system }: PaperSource, loads: Loads): Table {
  const mass = unitOf('massKg', system)
  return {
    title: `Mass by kind, ${mass.sign}`,
    columns: [
      ...LOAD_KINDS.map((kind) => ({ head: KIND_HEADS[kind], share: 10, show: 1 })),
      { head: 'All', share: 10, show: 1 },
    ],
    rows: [[...LOAD_KINDS.map((kind) => mass.fromSi(loads.kgByKind[kind])), mass.fromSi(loads.totalKg)]],
  }
}

/** Crew and hours of each line. */
export function hoursTable(source: PaperSource, hours: NetHours): Table {
  const row = ({
    line,
    crew,
    layingH,
    climbingH,
    crossingsH,
    splicesH,
    carryingH,
    totalH,
    recoveryH,
  }: LineHours) => [
    lineNumber(source, line),
    nameIn(source.plan, line),
    crew,
    layingH + climbingH,
    crossingsH,
    splicesH,
    carryingH,
    totalH,
    recoveryH,
  ]
  return {
    title: 'Hours of each line, laid by one crew',
    columns: [
      { head: 'Line', share: 12 },
      { head: 'From – to', share: 40 },
      { head: 'Crew', share: 14 },
      { head: 'Laying h', share: 18, show: 1 },
      { head: 'Crossings h', share: 24, show: 1 },
      { head: 'Splices h', share: 18, show: 1 },
      { head: 'Walking h', share: 19, show: 1 },
      { head: 'All h', share: 15, show: 1 },
      { head: 'Recovery h', share: 24, show: 1 },
    ],
    rows: hours.lines.map(row),
  }
}

/** What is still to be laid of each wire, and from which spools. */
export function leftTable({ plan, system }: PaperSource, { wires }: LeftToDo): Table {
  const [length, mass] = [unitOf('lengthM', system), unitOf('massKg', system)]
  const spoolWords = ({ spool, layM }: LeftToDo['wires'][number]['spools'][number]) =>
    `${spool} ${length.fromSi(layM).toFixed(0)}`
  return {
    title: 'What is left',
    columns: [
      { head: 'Wire', share: 40 },
      { head: `To lay ${length.sign}`, share: 18 },
      { head: mass.sign, share: 14, show: 1 },
      { head: `From spools, ${length.sign} of each`, share: 80 },
      { head: `Lies there ${length.sign}`, share: 20 },
    ],
    rows: wires.map(({ wire, layM, kg, spools, takeUpM }) => [
      nameIn(plan, wire),
      length.fromSi(layM),
      mass.fromSi(kg),
      spools.map(spoolWords).join(', '),
      length.fromSi(takeUpM),
    ]),
  }
}
