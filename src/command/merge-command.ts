import { changedVerdicts, mergePlans } from '../journal/merge-plans'
import { answer, type CommandIo, jsonText, parseArguments, Refusal, readPlan, writePlan } from './command-io'

const USAGE = 'usage: npm run -s merge -- BASE MINE THEIRS --out OUT'

/**
 * Merges two plan files that grew from one, writes the merged plan, and prints conflicts, what was mended, and changed verdicts as
 * one JSON object. Resolves to the exit code: 0, or 2 for bad input, and then nothing is written.
 */
export const runMerge = (args: readonly string[], io: CommandIo): Promise<number> =>
  answer(io, async () => {
    const { files, values } = parseArguments(args, ['--out'], USAGE)
    const out = values('--out').at(-1)
    if (files.length !== 3) throw new Refusal(`name three plan files. ${USAGE}`)
    if (out === undefined) throw new Refusal(`say where the merged plan goes. ${USAGE}`)
    const [base, mine, theirs] = await Promise.all(files.map((file) => readPlan(file, io, true)))
    const { plan, conflicts, mended } = mergePlans(base!, mine!, theirs!)
    await writePlan(out, plan, io)
    return jsonText({ conflicts, mended, verdicts: changedVerdicts(mine!, theirs!, plan) })
  })
