import { MOST_SAMPLES } from '../budget/odds'
import { measurePlan } from '../measure/measure-line'
import type { MeasuredLine } from '../measure/measured'
import type { CircuitId, LineId } from '../plan/id'
import type { Plan } from '../plan/plan'
import { besideReport } from '../report/beside-report'
import { remediesFor } from '../report/remedies'
import { applyChanges } from '../report/remedy-changes'
import type { Report } from '../report/report'
import { reportPlan } from '../report/report-plan'
import { planExtent } from '../terrain/plan-extent'
import { reportInWords } from '../words/json-report'
import { answer, type CommandIo, jsonText, parseArguments, Refusal, readPlan, writePlan } from './command-io'
import { readGround } from './read-ground'

interface Wishes {
  readonly file: string
  readonly terrain: readonly string[]
  readonly remedy: { readonly circuit: string; readonly index: number } | null
  readonly out: string | null
  readonly odds: { readonly samples: number; readonly seed: number } | null
}

const USAGE =
  'usage: npm run -s report -- FILE [--terrain FILE]… [--remedy CIRCUIT:N --out PLAN] [--odds N [--seed S]]'

/** Prints the report of a plan file as one JSON object. Resolves to the exit code: 0, or 2 for bad input. */
export const runReport = (args: readonly string[], io: CommandIo): Promise<number> =>
  answer(io, async () => {
    const wishes = wishesOf(args)
    const plan = await readPlan(wishes.file, io)
    const ground = await readGround(wishes.terrain, planExtent(plan), io)
    const measured = measurePlan(plan, ground)
    const report = withRemedies(reportPlan(plan, ground), plan, measured)
    if (wishes.remedy && wishes.out) await writeMended(plan, report, wishes.remedy, wishes.out, io)
    const printed = reportInWords(
      report,
      plan,
      (circuit) => besideReport(plan, circuit, measured, wishes.odds)!,
    )
    for (const { text } of printed.doubts) io.err(`doubt: ${text}\n`)
    return jsonText(printed)
  })

type Lengths = ReadonlyMap<LineId, MeasuredLine>

function withRemedies(report: Report, plan: Plan, measured: Lengths): Report {
  const circuits = report.circuits.map((circuit) => ({
    ...circuit,
    remedies: remediesFor(plan, circuit.id, measured),
  }))
  return { ...report, circuits }
}

function wishesOf(args: readonly string[]): Wishes {
  const { files, values } = parseArguments(
    args,
    ['--terrain', '--out', '--remedy', '--odds', '--seed'],
    USAGE,
  )
  const [file, second] = files
  if (file === undefined) throw new Refusal(`no plan file named. ${USAGE}`)
  if (second !== undefined) throw new Refusal(`${second}: only one plan at a time. ${USAGE}`)
  const [remedy, out] = [values('--remedy').at(-1), values('--out').at(-1)]
  if ((remedy === undefined) !== (out === undefined))
    throw new Refusal(`--remedy and --out go together. ${USAGE}`)
  return {
    file,
    terrain: values('--terrain'),
    remedy: remedy === undefined ? null : remedyNamed(remedy),
    out: out ?? null,
    odds: oddsNamed(values('--odds').at(-1), values('--seed').at(-1)),
  }
}

function oddsNamed(samples: string | undefined, seed: string | undefined): Wishes['odds'] {
  if (samples === undefined) {
    if (seed !== undefined) throw new Refusal(`--seed goes with --odds. ${USAGE}`)
    return null
  }
  const wholeNumber = (word: string, text: string, min: number, max: number) => {
    const value = /^\d+$/.test(text) ? Number(text) : Number.NaN
    if (value >= min && value <= max) return value
    throw new Refusal(`${word} ${text}: give a whole number from ${min} to ${max}.`)
  }
  return {
    samples: wholeNumber('--odds', samples, 1, MOST_SAMPLES),
    seed: seed === undefined ? 1 : wholeNumber('--seed', seed, 0, 2 ** 32 - 1),
  }
}

function remedyNamed(text: string): Wishes['remedy'] {
  const match = /^(.+):(\d+)$/.exec(text)
  if (!match) throw new Refusal(`--remedy ${text}: name a circuit and a number, as in c1:0.`)
  return { circuit: match[1]!, index: Number(match[2]) }
}

async function writeMended(
  plan: Plan,
  report: Report,
  { circuit, index }: { circuit: string; index: number },
  out: string,
  io: CommandIo,
): Promise<void> {
  const found = report.circuits.find(({ id }) => id === circuit)
  if (!found) throw new Refusal(`--remedy ${circuit}:${index}: the plan has no circuit ${circuit}.`)
  const remedy = found.remedies[index]
  if (!remedy) {
    const count = found.remedies.length
    throw new Refusal(
      `--remedy ${circuit}:${index}: ${circuit} has ${count === 0 ? 'no remedies' : `remedies 0 to ${count - 1}`}.`,
    )
  }
  await writePlan(out, applyChanges(plan, circuit as CircuitId, remedy.changes), io)
}
