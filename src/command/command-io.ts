import { formatPlan } from '../files/format-plan'
import { parsePlanBytes } from '../files/parse-plan'
import type { Plan } from '../plan/plan'
import type { Problem } from '../problem'

/** How a command reaches files and its two outputs. */
export interface CommandIo {
  readonly readBytes: (path: string) => Promise<Uint8Array>
  readonly write: (path: string, content: string | Uint8Array) => Promise<void>
  /** The reader of databases, as its package has it: only files that are one need it. */
  readonly sqliteWasm?: () => Promise<ArrayBuffer>
  readonly out: (text: string) => void
  readonly err: (text: string) => void
}

/** Bad input: printed one a line, exit 2, nothing on standard output. */
export class Refusal extends Error {
  readonly lines: readonly string[]
  constructor(...lines: readonly string[]) {
    super(lines.join('\n'))
    this.lines = lines
  }
}

export const refusalOf = (problems: readonly Problem[], path?: string): Refusal =>
  new Refusal(...problems.map(({ at, message }) => [path, at, message].filter((part) => part).join(': ')))

/** Prints what the work gives. Resolves to the exit code: 0, or 2 for bad input. */
export async function answer(io: CommandIo, work: () => Promise<string>): Promise<number> {
  try {
    io.out(await work())
    return 0
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    io.err(error.lines.map((line) => `${line.replaceAll('\n', ' ')}\n`).join(''))
    return 2
  }
}

export const jsonText = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`

export const readBytes = (path: string, io: CommandIo): Promise<Uint8Array> =>
  io.readBytes(path).catch((error: Error) => {
    throw new Refusal(`${path}: cannot be read (${error.message}).`)
  })

/** @param named whether faults name the file: where a command reads several */
export async function readPlan(path: string, io: CommandIo, named = false): Promise<Plan> {
  const result = parsePlanBytes(await readBytes(path, io))
  if (!result.ok) throw refusalOf(result.problems, named ? path : undefined)
  return result.value
}

export const writeFile = (path: string, content: string, io: CommandIo): Promise<void> =>
  io.write(path, content).catch((error: Error) => {
    throw new Refusal(`${path}: cannot be written (${error.message}).`)
  })

export const writePlan = (path: string, plan: Plan, io: CommandIo): Promise<void> =>
  writeFile(path, formatPlan(plan), io)

/** What stands on a command line: files in their order, and options with their values. */
export interface Arguments {
  readonly files: readonly string[]
  readonly values: (option: string) => readonly string[]
}

/** @param options those that take a value, `--out` */
export function parseArguments(
  args: readonly string[],
  options: readonly string[],
  usage: string,
): Arguments {
  const files: string[] = []
  const given = new Map<string, string[]>()
  for (let k = 0; k < args.length; k++) {
    const word = args[k]!
    if (options.includes(word)) {
      const next = args[++k]
      if (next === undefined) throw new Refusal(`${word}: needs a value. ${usage}`)
      given.set(word, [...(given.get(word) ?? []), next])
    } else if (word.startsWith('-')) throw new Refusal(`${word}: no such option. ${usage}`)
    else files.push(word)
  }
  return { files, values: (option) => given.get(option) ?? [] }
}
