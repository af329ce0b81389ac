import { BUDGET } from './budget.mjs'
import { FIELD } from './field.mjs'
import { GROUND } from './ground.mjs'
import { JOURNAL } from './journal.mjs'
import { PAPERS } from './papers.mjs'
import { SHELF } from './shelf.mjs'
import { TRAVEL } from './travel.mjs'
import { WORK } from './work.mjs'

/**
 * A fault of one line, planted to see whether a test finds it: a sign, a unit, a comparison, an end taken for the other.
 *
 * @typedef {object} Mutant
 * @property {string} fault what is wrong, in a few words
 * @property {string} file under the project
 * @property {string} from text that stands just once in the file
 * @property {string} to what takes its place
 * @property {readonly string[]} tests the tests nearest to it
 */

/** @type {readonly Mutant[]} */
export const MUTANTS = [...BUDGET, ...GROUND, ...WORK, ...FIELD, ...JOURNAL, ...PAPERS, ...SHELF, ...TRAVEL]

/**
 * The source with a mutant in it. Throws where its text does not stand there just once: then the list is out of date.
 *
 * @param {Mutant} mutant
 * @param {string} source
 */
export function mutated({ fault, file, from, to }, source) {
  const parts = source.split(from)
  if (parts.length !== 2) throw new Error(`${fault}: found ${parts.length - 1} times in ${file}: ${from}`)
  return parts.join(to)
}
