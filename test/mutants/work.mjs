/** @import { Mutant } from './mutants.mjs' */

/** @type {(file: string, tests: readonly string[]) => (fault: string, from: string, to: string) => Mutant} */
const inFile = (file, tests) => (fault, from, to) => ({ fault, file: `src/${file}`, from, to, tests })

const packing = inFile('materials/lay-wire.ts', ['test/materials'])
const wireFigures = inFile('materials/wire-figures.ts', ['test/materials'])
const hours = inFile('materials/hours.ts', ['test/materials'])
const loads = inFile('materials/loads.ts', ['test/materials'])
const splices = inFile('materials/splice-limits.ts', ['test/materials'])
const legs = inFile('plan/leg-edits.ts', ['test/plan'])
const lines = inFile('plan/line-edits.ts', ['test/plan'])
const apart = inFile('plan/line-removal.ts', ['test/plan'])
const changes = inFile('report/remedy-changes.ts', ['test/report'])
const safety = inFile('report/safety-cautions.ts', ['test/report'])
const practice = inFile('catalog/crossing-practice.ts', ['test/catalog', 'test/hazard', 'test/report'])
const overhead = inFile('catalog/overhead.ts', ['test/catalog', 'test/measure', 'test/report'])

/** @type {readonly Mutant[]} */
export const WORK = [
  wireFigures(
    'splice waste forgotten in what is needed',
    '(1 + reservePct / 100) + wasteM * splices',
    '(1 + reservePct / 100)',
  ),
  wireFigures('the reserve as a factor', 'planM * (1 + reservePct / 100)', 'planM * (reservePct / 100)'),
  wireFigures(
    'one pair’s wire for all pairs of a line',
    'total(lines.map((line) => line.wireM * line.pairs))',
    'total(lines.map((line) => line.wireM))',
  ),
  packing(
    'half the splice waste given twice',
    'const startM = doneM > 0 ? wasteM / 2 : 0',
    'const startM = doneM > 0 ? wasteM : 0',
  ),
  hours(
    'climbing costs nothing',
    'pairs * sum(climbM)) / allowances.climbMPerHour',
    'pairs * 0 * sum(climbM)) / allowances.climbMPerHour',
  ),
  hours(
    'minutes taken for hours',
    'crossingMin(one, allowances), 0) / 60',
    'crossingMin(one, allowances), 0)',
  ),
  hours('more people lay no faster than few', 'Math.min(1, people / crew)', '1'),
  loads(
    'trips rounded down',
    'trips: Math.ceil(loads / allowances.people)',
    'trips: Math.floor(loads / allowances.people)',
  ),
  loads('spare batteries forgotten', 'const spare = allowances.spareBatteriesPct / 100', 'const spare = 0'),
  splices('a mile taken for half a mile', 'METRES_PER_MILE / 2', 'METRES_PER_MILE'),
  splices('class B from five splices', 'perHalfMile > CLASS_A_SPLICES', 'perHalfMile > CLASS_A_SPLICES + 1'),
  legs(
    'removeBend drops the leg before the bend',
    'line.legs.toSpliced(bendIndex + 1, 1)',
    'line.legs.toSpliced(bendIndex, 1)',
  ),
  legs(
    'a new bend one place too far on',
    'line.bends.toSpliced(legIndex, 0, onGlobe(position))',
    'line.bends.toSpliced(legIndex + 1, 0, onGlobe(position))',
  ),
  lines(
    'electrodes keep their ends when a line turns',
    '[line.electrodeOhms[1], line.electrodeOhms[0]]',
    '[line.electrodeOhms[0], line.electrodeOhms[1]]',
  ),
  apart('the supply goes to another piece', 'pieces.find((piece) => piece.supply) ?? pieces[0]', 'pieces[0]'),
  changes('ohms of added cells forgotten', 'ohms: supply.ohms * ratio', 'ohms: supply.ohms'),
  changes(
    'one more cell counted twice',
    'supply.volts + cells * cellVolts(supply)',
    'supply.volts + 2 * cells * cellVolts(supply)',
  ),
  changes('rods at one end only', '[from * ratio, to * ratio]', '[from * ratio, to]'),
  safety('60 V of direct current taken for 600', 'SAFE_DC_VOLTS = 60', 'SAFE_DC_VOLTS = 600'),
  safety('30 V of ringing taken for 300', 'SAFE_RMS_VOLTS = 30', 'SAFE_RMS_VOLTS = 300'),
  practice('the strength asked for over rails', 'railBreakN: 756', 'railBreakN: 75.6'),
  practice('a crossing at ten degrees is square', 'squareDeg: 60', 'squareDeg: 6'),
  practice('the lower of two rules', 'b.metres > a.metres ? b : a', 'b.metres < a.metres ? b : a'),
  overhead('the hottest day is a mild one', 'hotC: 49', 'hotC: 4.9'),
  {
    fault: 'a drag keeps the plan that the figures have, not the one under the hand',
    file: 'src/state/hand.ts',
    from: 'if (held.value) history.value = commit(history.value, held.value)',
    to: 'if (draft.value) history.value = commit(history.value, draft.value)',
    tests: ['test/state/store.test.ts'],
  },
]
