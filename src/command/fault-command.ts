import { parseEvidence } from '../files/parse-evidence'
import { measurePlan } from '../measure/measure-line'
import type { CircuitId } from '../plan/id'
import { locateInCircuit } from '../report/locate-in-circuit'
import { faultInWords } from '../words/json-fault'
import {
  answer,
  type CommandIo,
  jsonText,
  parseArguments,
  Refusal,
  readBytes,
  readPlan,
  refusalOf,
} from './command-io'

const USAGE = 'usage: npm run -s fault -- FILE --circuit CIRCUIT --evidence EVIDENCE.json'

/** Prints where a fault of a circuit lies as one JSON object. Resolves to the exit code: 0, or 2 for bad input. */
export const runFault = (args: readonly string[], io: CommandIo): Promise<number> =>
  answer(io, async () => {
    const { files, values } = parseArguments(args, ['--circuit', '--evidence'], USAGE)
    const [file, second] = files
    const [id, path] = [values('--circuit').at(-1), values('--evidence').at(-1)]
    if (file === undefined) throw new Refusal(`no plan file named. ${USAGE}`)
    if (second !== undefined) throw new Refusal(`${second}: only one plan at a time. ${USAGE}`)
    if (id === undefined || path === undefined)
      throw new Refusal(`name the circuit and the evidence. ${USAGE}`)
    const plan = await readPlan(file, io)
    const circuit = plan.circuits.get(id as CircuitId)
    if (!circuit) throw new Refusal(`--circuit ${id}: the plan has no circuit ${id}.`)
    const evidence = parseEvidence(await readBytes(path, io), plan, circuit)
    if (!evidence.ok) throw refusalOf(evidence.problems, path)
    const measured = measurePlan(plan)
    const found = locateInCircuit(plan, circuit, measured, evidence.value)
    if (!found.ok) throw refusalOf(found.problems, path)
    return jsonText(faultInWords(plan, measured, found.value))
  })
