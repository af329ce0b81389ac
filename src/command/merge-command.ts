import { formatWithJournal, takeJournalOut } from '../files/carried-journal'
import { formatPlan } from '../files/format-plan'
import { changedVerdicts, mergeJournals, mergePlans } from '../journal/merge-plans'
import { answer, type CommandIo, jsonText, parseArguments, Refusal, readPlan, writeFile } from './command-io'

const USAGE = 'usage: npm run -s merge -- BASE MINE THEIRS --out OUT'

/**
 * Merges two plan files that grew from one, writes the merged plan, and prints conflicts, what was mended, and changed verdicts as
 * one JSON object. Where both files carry the journal of one plan, that tells what each has seen of the other; else the base does.
 * Resolves to the exit code: 0, or 2 for bad input, and then nothing is written.
 */
export const runMerge = (args: readonly string[], io: CommandIo): Promise<number> =>
  answer(io, async () => {
    const { files, values } = parseArguments(args, ['--out'], USAGE)
    const out = values('--out').at(-1)
    if (files.length !== 3) throw new Refusal(`name three plan files. ${USAGE}`)
    if (out === undefined) throw new Refusal(`say where the merged plan goes. ${USAGE}`)
    const read = await Promise.all(files.map((file) => readPlan(file, io, true)))
    const [base, mine, theirs] = read.map(takeJournalOut)
    for (const { said } of [mine!, theirs!]) if (said) io.err(`${said}\n`)
    const [own, other] = [mine!.journal, theirs!.journal]
    const joined = own && other && own.id === other.id && mergeJournals(base!.plan, own, other)
    const merged =
      joined && typeof joined !== 'string' ? joined : mergePlans(base!.plan, mine!.plan, theirs!.plan)
    const { plan, conflicts, mended } = merged
    await writeFile(out, merged === joined ? formatWithJournal(plan, own!) : formatPlan(plan), io)
    return jsonText({ conflicts, mended, verdicts: changedVerdicts(mine!.plan, theirs!.plan, plan) })
  })
