import { readdirSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'

/** Folders that speak in codes and figures: a second language has nothing to look for in them. */
const SILENT = ['geo', 'terrain', 'hazard', 'route', 'measure', 'budget', 'materials', 'plan', 'report']

/**
 * What reads like a sentence with a figure and is none that `words` should make: sources, which are quoted, and parts of a `Problem`,
 * which is made where the fault is found, with its place and its mend.
 */
const KNOWN: readonly string[] = [
  'hazard/judge-crossing.ts `§; California GO 95, rules 110 and 113.4; SS0444, p. 2-4`',
  'hazard/judge-crossing.ts `§; SS0330, p. 139, on noise`',
  'plan/field-schema.ts `The value is §: give what the meter read, 0 or more.`',
  'plan/settings-edits.ts `§ is no wire of the catalog: pick one that is.`',
  'plan/settings-schema.ts `The slack of §`',
  'report/remedy-changes.ts `derived: § with § more of its cells in series`',
]

const withoutComments = (text: string) =>
  text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/(^|\s)\/\/[^\n]*/g, '$1')

/** Templates with something put in and three words or more; neither what a programmer's throw says, nor the message of a `Problem`. */
function sentencesIn(file: string): readonly string[] {
  const text = withoutComments(readFileSync(`src/${file}`, 'utf8'))
  return [...text.matchAll(/`(?:[^`\\]|\\.)*`/g)].flatMap(({ 0: template, index }) => {
    const before = text.slice(Math.max(0, index - 160), index)
    if (/throw new \w*Error\(\s*$|fault\([^()]*$|message\b/.test(before)) return []
    const shown = template.replace(/\$\{(?:[^{}]|\{[^{}]*\})*\}/g, '§')
    return shown.includes('§') && (shown.match(/[A-Za-z’]{2,}/g) ?? []).length >= 3
      ? [`${file} ${shown}`]
      : []
  })
}

test.each(SILENT)('src/%s makes no sentence with a figure', (folder) => {
  const files = readdirSync(`src/${folder}`)
    .filter((name) => name.endsWith('.ts'))
    .sort()
  expect(files.length).toBeGreaterThan(0)
  const known = KNOWN.filter((each) => each.startsWith(`${folder}/`))
  expect(files.flatMap((name) => sentencesIn(`${folder}/${name}`))).toEqual(known)
})

test('the sieve catches the sentences that words makes', () => {
  expect(sentencesIn('words/remedy-words.ts').length).toBeGreaterThan(5)
  expect(sentencesIn('words/caution-words.ts').length).toBeGreaterThan(5)
})
