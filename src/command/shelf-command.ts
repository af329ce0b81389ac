import { formatPlan } from '../files/format-plan'
import { parseShelfBytes } from '../files/parse-shelf'
import { shelfAnswer } from '../shelf/shelf-answer'
import { answerInWords } from '../words/json-shelf'
import { answer, type CommandIo, jsonText, parseArguments, Refusal, readBytes, refusalOf } from './command-io'

const USAGE = 'usage: npm run -s shelf -- SHELF.json'

/**
 * Prints the nets that can be made of what lies on a shelf, the best first, as one JSON object. Resolves to the exit code: 0, or 2 for
 * bad input, and then nothing is printed.
 */
export const runShelf = (args: readonly string[], io: CommandIo): Promise<number> =>
  answer(io, async () => {
    const { files } = parseArguments(args, [], USAGE)
    const [file, second] = files
    if (file === undefined) throw new Refusal(`no shelf file named. ${USAGE}`)
    if (second !== undefined) throw new Refusal(`${second}: only one shelf at a time. ${USAGE}`)
    const shelf = parseShelfBytes(await readBytes(file, io))
    if (!shelf.ok) throw refusalOf(shelf.problems)
    return jsonText(answerInWords(shelfAnswer(shelf.value), (plan) => JSON.parse(formatPlan(plan))))
  })
