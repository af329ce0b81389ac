import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'

const read = (path: string) => readFileSync(path, 'utf8')
const { dependencies, devDependencies, scripts } = JSON.parse(read('package.json')) as Record<
  'dependencies' | 'devDependencies' | 'scripts',
  Record<string, string>
>

test('DEVELOPERS.md gives a reason for every package', () => {
  const text = read('DEVELOPERS.md')
  // Types come with the package that they describe.
  const packages = Object.keys({ ...dependencies, ...devDependencies }).filter(
    (name) => !/^@types\/|-types$/.test(name),
  )
  expect(packages.filter((name) => !text.includes(name))).toEqual([])
})

test('DEVELOPERS.md has a row for every folder of src', () => {
  const folders = readdirSync('src', { withFileTypes: true }).filter((entry) => entry.isDirectory())
  const text = read('DEVELOPERS.md')
  expect(folders.filter(({ name }) => !text.includes(`| ${name} |`)).map(({ name }) => name)).toEqual([])
})

test.each(['README.md', 'DEVELOPERS.md'])(
  '%s points only at files and commands that there are',
  (document) => {
    const text = read(document)
    const links = [...text.matchAll(/\]\((?!https?:)([^)#]+)\)/g)].map((match) => match[1]!)
    const paths = [...text.matchAll(/`((?:src|test|scripts|public)\/[\w./-]+)`/g)].map((match) => match[1]!)
    expect([...links, ...paths].filter((path) => !existsSync(path))).toEqual([])
    const commands = [...text.matchAll(/npm run (?:-s )?(\w+)/g)].map((match) => match[1]!)
    expect(commands.filter((name) => !(name in scripts))).toEqual([])
  },
)

test.each(['README.md', 'DEVELOPERS.md'])(
  '%s tells each row of a table and each paragraph once',
  (document) => {
    const lines = read(document).split('\n')
    const beginnings = lines
      .filter((line) => /^\| `|^\*\*/.test(line))
      .map((line) => (line.startsWith('|') ? line.split(/`(?: \||,| \[)/)[0]! : line.slice(0, 60)))
    expect(beginnings.filter((beginning, at) => beginnings.indexOf(beginning) < at)).toEqual([])
  },
)
