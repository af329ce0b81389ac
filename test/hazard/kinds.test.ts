import { readdirSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { HAZARDS } from '../../src/hazard/kinds'
import { HAZARD_KINDS, LAYS } from '../../src/plan/plan'

const files = readdirSync('src', { recursive: true, encoding: 'utf8' })
  .map((name) => name.replaceAll('\\', '/'))
  .filter((name) => /\.(tsx?|css)$/.test(name))

/** Kinds whose name means nothing else in the program: `water` is a lay too. */
const TELLING = HAZARD_KINDS.filter((kind) => !(LAYS as readonly string[]).includes(kind))
/** A kind named in code: quoted, as a member of an object, or in a class. */
const NAMED = new RegExp(
  `(['"\`])(${TELLING.join('|')})\\1|^\\s*(${TELLING.filter((kind) => !kind.includes('-')).join('|')}):|hazard-(${HAZARD_KINDS.join('|')})\\b`,
  'm',
)

test('only the plan’s type and the table of hazards know a kind by its name', () => {
  const naming = files.filter((file) => NAMED.test(readFileSync(`src/${file}`, 'utf8')))
  expect(naming.sort()).toEqual(['hazard/kinds.ts', 'plan/plan.ts'])
})

test('every stroke and filling that a kind asks for stands in the style sheets of map and paper', () => {
  const map = readFileSync('src/map/layers/layers.css', 'utf8')
  const paper = readFileSync('src/sheet/drawing.css', 'utf8')
  for (const { stroke, fill } of Object.values(HAZARDS)) {
    expect(map).toContain(`.stroke-${stroke} .hazard-bed`)
    expect(paper).toContain(`.${stroke}.bed`)
    if (fill !== 'none') expect(map).toContain(`.fill-${fill}.area`)
  }
})

test('strokes tell all kinds apart', () => {
  expect(new Set(Object.values(HAZARDS).map(({ stroke }) => stroke)).size).toBe(HAZARD_KINDS.length)
})

test('a route lays wire so that nothing is amiss with it', () => {
  for (const kind of HAZARD_KINDS) {
    const { route, at } = HAZARDS[kind]
    if (!route.laid) continue
    expect(at[route.laid.lay].judge, kind).toBeUndefined()
    expect(at[route.laid.lay].does, kind).toBeDefined()
  }
})
