import type { Verdict } from '../budget/rows'
import { isolated } from '../isolated'
import { placeOf } from '../journal/keys'
import type { CircuitId, LineId } from '../plan/id'
import { type Circuit, circuitName, type Plan } from '../plan/plan'
import type { ReportCircuit } from '../report/report'
import { checkWords } from './check-words'
import { propertyWords } from './property-words'
import type { Tongue } from './tongue'
import { formatList } from './units'

/** An edit of another hand, by its name. */
export interface NamedEdit {
  readonly who: string
  readonly key: string
}

/** A plan with the figures of its circuits. */
export interface Reckoned {
  readonly plan: Plan
  readonly circuits: readonly ReportCircuit[]
}

const RANK: Readonly<Record<Verdict, number>> = { fails: 0, thin: 1, works: 2 }
const SETTINGS = /^(weather|wireTempC|allowances)/

/** Which circuits no longer stand as they stood, and after whose edits: `River net no longer works: the current at Ford decides. Before that Ada changed the wire of Camp – Ford.` */
export function verdictNews(
  before: Reckoned,
  after: Reckoned,
  edits: readonly NamedEdit[],
  say: Tongue,
): readonly string[] {
  const known = new Map(before.circuits.map((each) => [each.id, each]))
  return after.circuits.flatMap((now) => {
    const was = known.get(now.id)
    const what = was && changeWords(was, now, say)
    if (!what) return []
    const circuits = [before, after].flatMap(({ plan }) => plan.circuits.get(now.id as CircuitId) ?? [])
    const plans = [before.plan, after.plan]
    const own = edits.filter(({ key }) =>
      circuits.some((each) => plans.some((plan) => touches(plan, each, key))),
    )
    return [
      `${circuitName(after.plan, circuits.at(-1)!)} ${what}.${causeWords(after.plan, own.length > 0 ? own : edits)}`,
    ]
  })
}

function changeWords(was: ReportCircuit, now: ReportCircuit, say: Tongue): string | undefined {
  const today = RANK[now.verdict] - RANK[was.verdict]
  const worst = RANK[now.worst.verdict] - RANK[was.worst.verdict]
  const hangs = now.worst.check ? `: ${checkWords(now.worst.check, say.name)} decides` : ''
  if (today < 0) return `${now.verdict === 'fails' ? 'no longer works' : 'is only thin now'}${hangs}`
  if (today > 0) return now.verdict === 'works' ? 'works now' : `is thin now, and failed before${hangs}`
  const weather = `${now.worst.weather}, wire at ${say.temp(now.worst.wireTempC)}`
  if (worst < 0)
    return `${now.worst.verdict === 'fails' ? 'no longer works' : 'is only thin now'} at worst (${weather})${hangs}`
  if (worst > 0)
    return now.worst.verdict === 'works'
      ? `works at worst now (${weather})`
      : `no longer fails at worst (${weather})`
  return undefined
}

/** Whether a property is one that a circuit's figures follow from. */
function touches(plan: Plan, circuit: Circuit, key: string): boolean {
  const { kind = '', id = '', member = '' } = placeOf(key) ?? {}
  const lines = circuit.lines.flatMap((each) => plan.lines.get(each) ?? [])
  switch (kind) {
    case 'circuits':
      return id === circuit.id
    case 'lines':
      return circuit.lines.includes(id as LineId)
    case 'stations':
      return lines.some(({ from, to }) => from === id || to === id)
    case 'wires':
      return lines.some(({ wire }) => wire === id)
    case 'sets':
      return [...circuit.sets.values()].includes(id as never)
    case 'supplies':
      return circuit.supply?.type === id
    case 'plan':
      return SETTINGS.test(member)
    default:
      return false
  }
}

function causeWords(plan: Plan, edits: readonly NamedEdit[]): string {
  const byWho = new Map<string, Set<string>>()
  for (const { who, key } of edits)
    byWho.set(who, (byWho.get(who) ?? new Set()).add(propertyWords(plan, key)))
  const parts = [...byWho].map(([who, things]) => `${isolated(who)} changed ${formatList([...things])}`)
  return parts.length > 0 ? ` Before that ${parts.join('; ')}.` : ''
}
