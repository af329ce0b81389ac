import { goesByEarth } from '../fault/bridge'
import type { Evidence } from '../fault/evidence'
import { locateFault } from '../fault/locate'
import { parseEvidence } from '../files/parse-evidence'
import { lineTags } from '../measure/line-tags'
import { measurePlan } from '../measure/measure-line'
import type { MeasuredLine } from '../measure/measured'
import type { CircuitId, LineId } from '../plan/id'
import type { Circuit, Plan } from '../plan/plan'
import { circuitNetwork } from '../report/circuit-network'
import { laidCatalog } from '../report/learned-of'
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
    const model = circuitNetwork(plan, circuit, laidCatalog(plan, measured), measured)
    const refused = evidence.value.flatMap((each, index) => {
      const fault = outOfReach(each, measured) ?? byEarth(each)
      return fault ? [`${path}: evidence[${index}]: ${fault}`] : []
    })
    if (refused.length > 0) throw new Refusal(...refused)
    const found = locateFault(plan, model, evidence.value, tagsOf(plan, circuit, measured))
    return jsonText(faultInWords(plan, measured, found))

    function byEarth(each: Evidence): string | undefined {
      const isBridge = 'murray' in each || 'varley' in each
      return isBridge && goesByEarth({ plan, model, figures: [] }, each)
        ? 'A bridge needs a good wire back, and a line on this way returns by earth.'
        : undefined
    }
  })

type Measured = ReadonlyMap<LineId, MeasuredLine>

/** A meter that stands farther out than its line is long. */
function outOfReach(each: Evidence, measured: Measured): string | undefined {
  if (!('line' in each)) return undefined
  const { wireM } = measured.get(each.line as LineId)!
  return each.wireM > wireM + 1e-6
    ? `The meter stands at ${each.wireM} m of wire, and the line has ${wireM.toFixed(1)} m: give a place on it.`
    : undefined
}

/** Places where a pair can be opened and measured. */
const tagsOf = (plan: Plan, circuit: Circuit, measured: Measured) =>
  circuit.lines.flatMap((id) =>
    lineTags(plan, measured.get(id)!, plan.lines.get(id)!).map(({ wireM }) => ({ line: id, wireM })),
  )
