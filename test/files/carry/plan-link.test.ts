import { deflateRawSync, inflateRawSync } from 'node:zlib'
import { expect, test } from 'vitest'
import { packPlan, unpackPlan } from '../../../src/files/carry/pack-plan'
import { planLink, planOfFragment } from '../../../src/files/carry/plan-link'
import { formatPlan } from '../../../src/files/format-plan'
import { demoPlan } from '../../sheet/demo-source'

const fragmentOf = (link: string) => new URL(link).hash
const message = (result: ReturnType<typeof unpackPlan> | undefined) =>
  result && !result.ok ? result.problems[0]!.message : undefined

test('a plan comes back from its link as it was, and no server sees it', () => {
  const plan = demoPlan()
  const link = planLink('https://camp.example/fieldpair/index.html#old', plan)
  const url = new URL(link)
  expect(url.origin + url.pathname + url.search).toBe('https://camp.example/fieldpair/index.html')
  const back = planOfFragment(fragmentOf(link))
  expect(back?.ok && formatPlan(back.value)).toBe(formatPlan(plan))
})

test('another inflater reads the same plan out of it', () => {
  const plan = demoPlan()
  const text = inflateRawSync(packPlan(plan)).toString('utf8')
  expect(JSON.parse(text)).toEqual(JSON.parse(formatPlan(plan)))
})

test('white space within names stays', () => {
  const plan = { ...demoPlan(), title: 'A  “quoted \\" \n name”' }
  const back = unpackPlan(packPlan(plan))
  expect(back.ok && back.value.title).toBe(plan.title)
})

test('a fragment of another kind is none of ours', () => {
  expect(planOfFragment('')).toBeUndefined()
  expect(planOfFragment('#map')).toBeUndefined()
})

test('a link cut off anywhere is refused in a sentence', () => {
  const whole = fragmentOf(planLink('https://camp.example/', demoPlan()))
  for (let length = 6; length < whole.length; length += 397)
    expect(message(planOfFragment(whole.slice(0, length)))).toMatch(/not come whole/)
  expect(message(planOfFragment('#plan=%%%'))).toMatch(/not come whole/)
})

test('what unpacks to gigabytes is stopped', () => {
  const bomb = deflateRawSync(new Uint8Array(64 * 1024 * 1024))
  expect(bomb.length).toBeLessThan(100_000)
  expect(message(unpackPlan(bomb))).toMatch(/more than 32 MB/)
})

test('what is no plan is refused as a file would be', () => {
  const packed = deflateRawSync(new TextEncoder().encode('{"type":"FeatureCollection","features":[]}'))
  expect(message(unpackPlan(packed))).toBeTruthy()
})
