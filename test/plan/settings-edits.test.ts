import { expect, test } from 'vitest'
import { formatPlan } from '../../src/files/format-plan'
import { parsePlan } from '../../src/files/parse-plan'
import { EMPTY_PLAN } from '../../src/plan/plan'
import {
  type AllowanceField,
  putStock,
  setAllowance,
  setLoadingDistrict,
  setStock,
  setWeather,
  setWireTemp,
  setWork,
} from '../../src/plan/settings-edits'
import { WORK, WORK_FIELDS, workOf } from '../../src/plan/work'
import { mended, refusals } from './drawn-net'

const FIELDS: readonly AllowanceField[] = [
  ...(['slackPct.surface', 'slackPct.overhead', 'slackPct.buried', 'slackPct.water'] as const),
  ...(['sagPct', 'tailM', 'spliceWasteM', 'reservePct'] as const),
]

test.each(FIELDS)(
  'the allowance %s takes a number of its range and refuses others with a sentence',
  (field) => {
    const plan = mended(setAllowance(EMPTY_PLAN, field, 7))
    const [name, lay] = field.split('.') as [string, string | undefined]
    const { [name]: value } = plan.allowances as unknown as Record<string, unknown>
    expect(lay ? (value as Record<string, unknown>)[lay] : value).toBe(7)
    expect(mended(setAllowance(plan, field, 7))).toBe(plan)
    for (const wrong of [-1, Number.NaN, Number.POSITIVE_INFINITY, 1e9])
      expect(refusals(setAllowance(plan, field, wrong))[0]).toMatch(
        /^The .+: give a number from 0 to [\d,]+ (%|m)\.$/,
      )
  },
)

test('the wire may be as cold as −60 °C and as hot as 90 °C', () => {
  expect(mended(setWireTemp(EMPTY_PLAN, -60)).wireTempC).toBe(-60)
  expect(mended(setWireTemp(EMPTY_PLAN, 90)).wireTempC).toBe(90)
  expect(refusals(setWireTemp(EMPTY_PLAN, 91))).toEqual([
    'The temperature of the wire is 91: give a number from −60 to 90 °C.',
  ])
  expect(mended(setWireTemp(EMPTY_PLAN, 20))).toBe(EMPTY_PLAN)
  expect(setWeather(EMPTY_PLAN, 'dry')).toBe(EMPTY_PLAN)
})

test('a loading district is said or left open', () => {
  const heavy = setLoadingDistrict(EMPTY_PLAN, 'heavy')
  expect(heavy.loadingDistrict).toBe('heavy')
  expect(setLoadingDistrict(heavy, 'heavy')).toBe(heavy)
  expect(setLoadingDistrict(heavy, null)).toEqual(EMPTY_PLAN)
  expect(setLoadingDistrict(EMPTY_PLAN, null)).toBe(EMPTY_PLAN)
  const read = parsePlan(formatPlan(heavy))
  expect(read.ok && read.value.loadingDistrict).toBe('heavy')
  expect(parsePlan(formatPlan(heavy).replace('"heavy"', '"arctic"'))).toMatchObject({
    ok: false,
    problems: [{ at: 'plan.loadingDistrict' }],
  })
})

test('spools at hand are counted by wire and length', () => {
  const two = mended(putStock(EMPTY_PLAN, { wire: 'wd-1a', lengthM: 400, count: 2 }))
  const more = mended(putStock(two, { wire: 'wd-1a', lengthM: 800, count: 1 }))
  expect(mended(putStock(more, { wire: 'wd-1a', lengthM: 400, count: 3 })).stock).toEqual([
    { wire: 'wd-1a', lengthM: 400, count: 3 },
    { wire: 'wd-1a', lengthM: 800, count: 1 },
  ])
  expect(mended(putStock(more, { wire: 'wd-1a', lengthM: 400, count: 2 }))).toBe(more)
  expect(mended(putStock(more, { wire: 'wd-1a', lengthM: 800, count: 0 }))).toEqual(two)
})

test('stock that cannot be is refused, each fault with a sentence', () => {
  const wrong = [
    { wire: 'silk', lengthM: 400, count: 1 },
    { wire: 'wd-1a', lengthM: 0, count: 1.5 },
  ]
  expect(refusals(setStock(EMPTY_PLAN, wrong))).toHaveLength(3)
  expect(mended(setStock(EMPTY_PLAN, []))).toBe(EMPTY_PLAN)
})

test.each(WORK_FIELDS)(
  'the figure %s of the work takes a number of its range, and forgets the usual one',
  (field) => {
    const { min, max, usual } = WORK[field]
    const plan = mended(setWork(EMPTY_PLAN, field, max))
    expect(workOf(plan, field)).toBe(max)
    expect(mended(setWork(plan, field, max))).toBe(plan)
    expect(mended(setWork(plan, field, usual))).toEqual(EMPTY_PLAN)
    expect(mended(setWork(EMPTY_PLAN, field, usual))).toBe(EMPTY_PLAN)
    for (const wrong of [min - 1, max + 1, Number.NaN])
      expect(refusals(setWork(plan, field, wrong))[0]).toMatch(/^The .+: give a .*number from /)
  },
)
