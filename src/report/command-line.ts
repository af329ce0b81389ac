import { bytesFrom } from '../files/byte-source'
import { formatPlan } from '../files/format-plan'
import { parsePlanBytes } from '../files/parse-plan'
import { measurePlan } from '../measure/measure-line'
import type { CircuitId } from '../plan/id'
import type { Plan } from '../plan/plan'
import type { Problem } from '../problem'
import type { Ground } from '../terrain/ground'
import { planExtent } from '../terrain/plan-extent'
import { reportInWords } from '../words/json-report'
import { remediesFor } from './remedies'
import { applyChanges } from './remedy-changes'
import type { Report } from './report'
import { reportPlan } from './report-plan'

/** How the command line reaches files and its two outputs. */
export interface CommandIo {
  readonly readBytes: (path: string) => Promise<Uint8Array>
  readonly writeText: (path: string, text: string) => Promise<void>
  readonly out: (text: string) => void
  readonly err: (text: string) => void
}

interface Wishes {
  readonly file: string
  readonly terrain: readonly string[]
  readonly remedy: { readonly circuit: string; readonly index: number } | null
  readonly out: string | null
}

const USAGE = 'usage: npm run -s report -- FILE [--terrain FILE]… [--remedy CIRCUIT:N --out PLAN]'

/** Bad input: printed one a line, exit 2, nothing on standard output. */
class Refusal extends Error {
  readonly lines: readonly string[]
  constructor(...lines: readonly string[]) {
    super(lines.join('\n'))
    this.lines = lines
  }
}

/** Prints the report of a plan file as one JSON object. Resolves to the exit code: 0, or 2 for bad input. */
export async function runReport(args: readonly string[], io: CommandIo): Promise<number> {
  try {
    const wishes = parseArguments(args)
    const plan = await readPlan(wishes.file, io)
    const ground = await readGround(wishes.terrain, plan, io)
    const report = withRemedies(reportPlan(plan, ground), plan, ground)
    if (wishes.remedy && wishes.out) await writeMended(plan, report, wishes.remedy, wishes.out, io)
    io.out(`${JSON.stringify(reportInWords(report, plan), null, 2)}\n`)
    return 0
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    io.err(error.lines.map((line) => `${line.replaceAll('\n', ' ')}\n`).join(''))
    return 2
  }
}

function withRemedies(report: Report, plan: Plan, ground?: Ground): Report {
  const measured = measurePlan(plan, ground)
  const circuits = report.circuits.map((circuit) => ({
    ...circuit,
    remedies: remediesFor(plan, circuit.id, measured),
  }))
  return { ...report, circuits }
}

function parseArguments(args: readonly string[]): Wishes {
  let file: string | undefined
  let remedy: Wishes['remedy'] = null
  let out: string | null = null
  const terrain: string[] = []
  for (let k = 0; k < args.length; k++) {
    const word = args[k]!
    const value = () => {
      const next = args[++k]
      if (next === undefined) throw new Refusal(`${word}: needs a value. ${USAGE}`)
      return next
    }
    if (word === '--terrain') terrain.push(value())
    else if (word === '--out') out = value()
    else if (word === '--remedy') remedy = parseRemedy(value())
    else if (word.startsWith('-')) throw new Refusal(`${word}: no such option. ${USAGE}`)
    else if (file !== undefined) throw new Refusal(`${word}: only one plan at a time. ${USAGE}`)
    else file = word
  }
  if (file === undefined) throw new Refusal(`no plan file named. ${USAGE}`)
  if ((remedy === null) !== (out === null)) throw new Refusal(`--remedy and --out go together. ${USAGE}`)
  return { file, terrain, remedy, out }
}

function parseRemedy(text: string): Wishes['remedy'] {
  const match = /^(.+):(\d+)$/.exec(text)
  if (!match) throw new Refusal(`--remedy ${text}: name a circuit and a number, as in c1:0.`)
  return { circuit: match[1]!, index: Number(match[2]) }
}

async function readPlan(path: string, io: CommandIo): Promise<Plan> {
  const bytes = await io.readBytes(path).catch((error: Error) => {
    throw new Refusal(`${path}: cannot be read (${error.message}).`)
  })
  const result = parsePlanBytes(bytes)
  if (!result.ok) throw new Refusal(...result.problems.map(problemLine))
  return result.value
}

const problemLine = ({ at, message }: Problem): string => (at ? `${at}: ${message}` : message)

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
  const mended = applyChanges(plan, circuit as CircuitId, remedy.changes)
  await io.writeText(out, formatPlan(mended)).catch((error: Error) => {
    throw new Refusal(`${out}: cannot be written (${error.message}).`)
  })
}

async function readGround(paths: readonly string[], plan: Plan, io: CommandIo): Promise<Ground | undefined> {
  if (paths.length === 0) return undefined
  const { groundFromFiles } = await import('../files/elevation-files')
  const sources = await Promise.all(
    paths.map(async (path) => {
      const bytes = await io.readBytes(path).catch((error: Error) => {
        throw new Refusal(`${path}: cannot be read (${error.message}).`)
      })
      return bytesFrom(path, new Uint8Array(bytes))
    }),
  )
  const result = await groundFromFiles(sources, planExtent(plan))
  if (!result.ok) throw new Refusal(...result.problems.map(problemLine))
  return result.value
}
