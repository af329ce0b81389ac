/** @import { Mutant } from './mutants.mjs' */

/** @type {(file: string, tests: readonly string[]) => (fault: string, from: string, to: string) => Mutant} */
const inFile = (file, tests) => (fault, from, to) => ({ fault, file: `src/${file}`, from, to, tests })

const norths = inFile('sheet/paper-source.ts', ['test/sheet'])
const grid = inFile('geo/utm.ts', ['test/geo'])

/** @type {readonly Mutant[]} */
export const PAPERS = [
  norths(
    'the sign of the declination on the crew’s sheet',
    'trueDeg - declination.value.eastDeg',
    'trueDeg + declination.value.eastDeg',
  ),
  grid('the sign of the grid’s convergence', 'return -radToDeg(', 'return radToDeg('),
]
