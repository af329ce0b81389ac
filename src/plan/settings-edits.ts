import { BUILT_IN } from '../catalog/built-in'
import { DEFAULT_LAYING, type Means } from '../catalog/laying-rates'
import type { LoadingDistrict } from '../catalog/overhead-loading'
import { bad, ok, type Problem, type Result } from '../problem'
import { limitFault, valueWords } from '../schema/limit'
import { LAYS } from './lays'
import { LIMITS, SLACK_LIMITS } from './limits'
import type { Allowances, Lay, PaperWishes, Plan, Stock, Weather } from './plan'
import { WORK, type WorkField, workOf } from './work'

export const setWeather = (plan: Plan, weather: Weather): Plan =>
  plan.weather === weather ? plan : { ...plan, weather }

export function setWireTemp(plan: Plan, wireTempC: number): Result<Plan> {
  const fault = limitFault(LIMITS.wireTempC, wireTempC)
  if (fault) return bad({ code: 'out-of-range', at: 'plan.wireTempC', message: fault })
  return ok(plan.wireTempC === wireTempC ? plan : { ...plan, wireTempC: wireTempC + 0 })
}

/** Says in which loading district the net lies; null leaves it open. */
export function setLoadingDistrict(plan: Plan, district: LoadingDistrict | null): Plan {
  if ((plan.loadingDistrict ?? null) === district) return plan
  const { loadingDistrict: _, ...others } = plan
  return district ? { ...others, loadingDistrict: district } : others
}

type PlainAllowance = 'sagPct' | 'tailM' | 'spliceWasteM' | 'reservePct' | 'spliceOhms' | 'spliceMicroS'
export type AllowanceField = PlainAllowance | `slackPct.${Lay}`

/** Sets one allowance, named by its place: `tailM`, `slackPct.surface`. */
export function setAllowance(plan: Plan, field: AllowanceField, value: number): Result<Plan> {
  const lay = LAYS.find((each) => field === `slackPct.${each}`)
  const fault = limitFault(lay ? SLACK_LIMITS[lay] : LIMITS[field as PlainAllowance], value)
  if (fault) return bad({ code: 'out-of-range', at: `plan.allowances.${field}`, message: fault })
  const { allowances } = plan
  const before = lay ? allowances.slackPct[lay] : (allowances[field as PlainAllowance] ?? 0)
  if (before === value) return ok(plan)
  const after: Allowances = lay
    ? { ...allowances, slackPct: { ...allowances.slackPct, [lay]: value + 0 } }
    : { ...allowances, [field]: value + 0 }
  return ok({ ...plan, allowances: after })
}

/** Sets one figure of the work. The usual one is not kept in the plan. */
export function setWork(plan: Plan, field: WorkField, value: number): Result<Plan> {
  const fault = limitFault(WORK[field], value)
  if (fault) return bad({ code: 'out-of-range', at: `plan.work.${field}`, message: fault })
  if (workOf(plan, field) === value) return ok(plan)
  const { work, ...others } = plan
  const { [field]: _, ...kept } = work ?? {}
  const after = value === WORK[field].usual ? kept : { ...kept, [field]: value + 0 }
  return ok(Object.keys(after).length > 0 ? { ...others, work: after } : others)
}

/** Sets how fast wire is brought, laid and taken up again to what the catalog has for one way of bringing it forward. */
export function setMeans(plan: Plan, means: Means): Plan {
  const { rates, recoveryKmPerHour, walkKmPerHour } = DEFAULT_LAYING[means]
  const figures: Readonly<Partial<Record<WorkField, number>>> = {
    surfaceKmPerHour: rates.surface.kmPerHour,
    overheadKmPerHour: rates.overhead.kmPerHour,
    buriedKmPerHour: rates.buried.kmPerHour,
    waterKmPerHour: rates.water.kmPerHour,
    recoveryKmPerHour,
    walkKmPerHour,
  }
  return Object.entries(figures).reduce((before, [field, value]) => {
    const after = setWork(before, field as WorkField, value)
    if (!after.ok) throw new Error(`the catalog has a rate that no plan takes: ${field} ${value}`)
    return after.value
  }, plan)
}

/** What is said anew of the papers; the rest stays as it was said. */
export const setPaperWishes = (plan: Plan, wishes: PaperWishes): Plan => ({
  ...plan,
  papers: { ...plan.papers, ...wishes },
})

/** The spools at hand, all at once. */
export function setStock(plan: Plan, stock: readonly Stock[]): Result<Plan> {
  const wires = new Set([...plan.catalog.wires, ...BUILT_IN.wires].map((wire) => wire.id))
  const faults = stock.flatMap((each, index): Problem[] => {
    const at = `plan.stock[${index}]`
    const unknown = wires.has(each.wire)
      ? undefined
      : `${valueWords(each.wire)} is no wire of the catalog: pick one that is.`
    const messages = [
      unknown,
      limitFault(LIMITS.stockLengthM, each.lengthM),
      limitFault(LIMITS.stockCount, each.count),
    ]
    return messages.flatMap((message) => (message ? [{ code: 'bad-stock', at, message }] : []))
  })
  if (faults.length > 0) return bad(...faults)
  const same = stock.length === plan.stock.length && stock.every((each, index) => each === plan.stock[index])
  return ok(same ? plan : { ...plan, stock: stock.map((each) => ({ ...each, count: each.count + 0 })) })
}

/** Sets how many spools of one wire and length are at hand; none takes the entry away. */
export function putStock(plan: Plan, { wire, lengthM, count }: Stock): Result<Plan> {
  const isIt = (each: Stock) => each.wire === wire && each.lengthM === lengthM
  const before = plan.stock.find(isIt)
  if ((before?.count ?? 0) === count) return ok(plan)
  const others = plan.stock.filter((each) => !isIt(each))
  if (count === 0) return setStock(plan, others)
  if (!before) return setStock(plan, [...plan.stock, { wire, lengthM, count }])
  return setStock(
    plan,
    plan.stock.flatMap((each) => (each === before ? [{ ...each, count }] : isIt(each) ? [] : [each])),
  )
}
