import { readdirSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import type { MetCrossing } from '../../src/hazard/crossing-notes'
import { overRails } from '../../src/hazard/judge-crossing'
import { HAZARDS } from '../../src/hazard/kinds'
import { HAZARD_KINDS } from '../../src/plan/hazard-schema'
import { LAYS } from '../../src/plan/lays'
import { NEWTONS_PER_POUND_FORCE } from '../../src/units'

const files = readdirSync('src', { recursive: true, encoding: 'utf8' })
  .map((name) => name.replaceAll('\\', '/'))
  .filter((name) => /\.(tsx?|css)$/.test(name))

/** Kinds whose name means nothing else in the program: `water` is a lay too. */
const TELLING = HAZARD_KINDS.filter((kind) => !(LAYS as readonly string[]).includes(kind))
/** Files of the field book, in which a track is what was walked. */
const OF_WALKS = [
  ...['field/as-laid.ts', 'plan/field-schema.ts', 'words/record-words.ts', 'panel/record/as-laid.tsx'],
  'files/carry/light-plan.ts',
  ...['walk/deeds.tsx', 'walk/keep-track.ts', 'state/follow-field.ts', 'plan/under-way.ts'],
]
/** A kind named in code: quoted, as a member of an object, or in a class. */
const named = (kinds: readonly string[]) =>
  new RegExp(
    `(['"\`])(${kinds.join('|')})\\1|^\\s*(${kinds.filter((kind) => !kind.includes('-')).join('|')}):|hazard-(${HAZARD_KINDS.join('|')})\\b`,
    'm',
  )
const [ANY, BUT_TRACK] = [named(TELLING), named(TELLING.filter((kind) => kind !== 'track'))]

test('only the plan’s type and the table of hazards know a kind by its name', () => {
  const naming = files.filter((file) =>
    (OF_WALKS.includes(file) ? BUT_TRACK : ANY).test(readFileSync(`src/${file}`, 'utf8')),
  )
  expect(naming.sort()).toEqual(['hazard/kinds.ts', 'plan/hazard-schema.ts'])
})

test('every stroke and filling that a kind asks for stands in the style sheets of map and paper', () => {
  const map = readFileSync('src/map/layers/hazards.css', 'utf8')
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

test('to cross a road costs a route more than a track, and rails more than a road: the busier, the dearer', () => {
  const toll = (kind: 'road' | 'track' | 'railway') => HAZARDS[kind].route.toll?.usual ?? 0
  expect(toll('track')).toBeLessThan(toll('road'))
  expect(toll('road')).toBeLessThan(toll('railway'))
})

test('over rails each wire of a pair is asked to bear what the code asks of one', () => {
  // California GO 95, rule 113.4: each wire of an unsupported pair breaks at 170 lbf (756 N) or more.
  const isWeak = (breakN: number) => overRails({ hanging: () => undefined, breakN } as unknown as MetCrossing)
  expect(isWeak(2 * 755)).toMatchObject({ isWeak: true, leastN: 756 })
  expect(isWeak(2 * 757)).toMatchObject({ isWeak: false })
  expect(170 * NEWTONS_PER_POUND_FORCE).toBeCloseTo(756, 0)
})
