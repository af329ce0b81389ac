import { formatPlan } from '../files/format-plan'
import { parseShelfBytes } from '../files/parse-shelf'
import { shelfAnswer } from '../shelf/shelf-answer'
import { termsOver } from '../shelf/ways-over'
import { extentAbout } from '../terrain/plan-extent'
import { answerInWords } from '../words/json-shelf'
import { answer, type CommandIo, jsonText, parseArguments, Refusal, readBytes, refusalOf } from './command-io'
import { readGround } from './read-ground'

const USAGE = 'usage: npm run -s shelf -- SHELF.json [--terrain FILE]…'

/**
 * Prints the nets that can be made of what lies on a shelf, the best first, as one JSON object. Resolves to the exit code: 0, or 2 for
 * bad input, and then nothing is printed.
 */
export const runShelf = (args: readonly string[], io: CommandIo): Promise<number> =>
  answer(io, async () => {
    const { files, values } = parseArguments(args, ['--terrain'], USAGE)
    const [file, second] = files
    if (file === undefined) throw new Refusal(`no shelf file named. ${USAGE}`)
    if (second !== undefined) throw new Refusal(`${second}: only one shelf at a time. ${USAGE}`)
    const shelf = parseShelfBytes(await readBytes(file, io))
    if (!shelf.ok) throw refusalOf(shelf.problems)
    const placed = shelf.value.places.flatMap(({ position }) => (position ? [position] : []))
    const ground = await readGround(values('--terrain'), extentAbout(placed), io)
    const found = shelfAnswer(shelf.value, termsOver(shelf.value, { hazards: [] }, ground))
    return jsonText(answerInWords(found, (plan) => JSON.parse(formatPlan(plan))))
  })
