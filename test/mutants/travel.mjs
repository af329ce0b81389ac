/** @import { Mutant } from './mutants.mjs' */

/** @type {(file: string, tests: readonly string[]) => (fault: string, from: string, to: string) => Mutant} */
const inFile = (file, tests) => (fault, from, to) => ({ fault, file: `src/${file}`, from, to, tests })

const written = inFile('files/places/write-places.ts', ['test/files/places'])
const kml = inFile('files/places/read-kml.ts', ['test/files/places'])
const gaps = inFile('report/ground-gaps.ts', ['test/report'])
const doubts = inFile('report/doubts.ts', ['test/report'])
const allowed = inFile('state/keeping-allowed.ts', ['test/state'])
const online = inFile('storage/online-part.ts', ['test/storage'])
const shift = inFile('geo/datum-shift.ts', ['test/geo'])

/** Plans and maps that come from elsewhere, and go there. */
/** @type {readonly Mutant[]} */
export const TRAVEL = [
  written('latitude written where longitude belongs', 'degrees(p[1])', 'degrees(p[0])'),
  written('a longitude that GPX has no room for', 'p[0] === 180 ? -180 : p[0]', 'p[0]'),
  kml(
    'an altitude that nobody knows taken for the sea',
    "altitudeM === 0 && altitudeMode !== 'absolute'",
    'false',
  ),
  gaps('ground that is known told as a gap', 'legs[to]?.onGrid === false', 'legs[to]?.onGrid === true'),
  doubts(
    'gaps of the ground left untold',
    'meets ? all.filter(isGap) : []',
    'meets ? [] : all.filter(isGap)',
  ),
  allowed('tiles kept without a word about their terms', 'source.mayKeep === true && ', ''),
  allowed('tiles kept of a server that forbids it', 'FORBIDDING.test(host) || ', ''),
  online('tiles asked for as fast as they come', 'pause(1000 / KEEPING.tilesPerS)', 'pause(0)'),
  online('more of a map taken than is said', 'if (count > KEEPING.mostTiles) break', ''),
  shift('a shift that nobody knows told as sure', 'said < UNKNOWN_M ?', 'said > 0 ?'),
]
