import { type Check, differencePct, type Known, knownAs } from './check'

const percent = (value: number) => (value < 0.005 ? '< 0.01 %' : `${value.toFixed(2)} %`)

const worst = (list: readonly Check[]) => {
  const measured = list.filter(({ bound }) => bound === undefined)
  return measured.length === 0 ? 'bound kept' : percent(Math.max(...measured.map(differencePct)))
}

/** Groups that keep the order in which their keys first appear. */
function groupBy<T>(list: readonly T[], keyOf: (item: T) => string): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>()
  for (const item of list) {
    const key = keyOf(item)
    const group = groups.get(key)
    if (group) group.push(item)
    else groups.set(key, [item])
  }
  return groups
}

const plural = (list: readonly Check[]) => (list.length === 1 ? '1 check' : `${list.length} checks`)

const worksOf = (list: readonly Check[]) =>
  [...groupBy(list, ({ source }) => source.work)].flatMap(([work, ofWork]) => [
    `- **${work}**: ${plural(ofWork)}, ${worst(ofWork)}`,
    ...[...groupBy(ofWork, ({ source }) => source.place)].map(
      ([place, rows]) => `  - ${place}: ${rows.map(({ what }) => what).join('; ')}`,
    ),
  ])

interface Subject {
  readonly subject: string
  readonly list: readonly Check[]
}

const only = (subjects: readonly Subject[], known: Known): readonly Subject[] =>
  subjects
    .map(({ subject, list }) => ({ subject, list: list.filter((check) => knownAs(check) === known) }))
    .filter(({ list }) => list.length > 0)

const count = (subjects: readonly Subject[]) => {
  const all = subjects.flatMap(({ list }) => list)
  return { figures: all.length, works: new Set(all.map(({ source }) => source.work)).size }
}

const part = (title: string, says: string, subjects: readonly Subject[]) => [
  '',
  `## ${title}`,
  '',
  says,
  ...subjects.flatMap(({ subject, list }) => ['', `### ${subject}`, '', ...worksOf(list)]),
]

/** The list of works, what is checked against each, and by how much the project's figures differ at worst: Markdown. */
export function sourcesList(subjects: readonly Subject[]): string {
  const [read, memory, same] = (['read', 'memory', 'same'] as const).map((known) => only(subjects, known))
  const [ofRead, ofMemory, ofSame] = [count(read!), count(memory!), count(same!)]
  return [
    '# Figures that the program is held to',
    '',
    `**${ofRead.figures} published figures of ${ofRead.works} works**, read in the work or in a page that quotes it, none of them the figure that the code is made of.`,
    `Besides: ${ofMemory.figures} figures of ${ofMemory.works} works from memory, and ${ofSame.figures} that the code itself is made of, which only show that nothing got lost on the way.`,
    '',
    'Made by `node scripts/list-sources.mjs`; a test fails when it is out of date. The percentage is the worst difference between a figure and the one',
    'computed; a bound is a figure that the work only calls the most or the least allowed.',
    ...part('Read', 'Seen in the work itself, or in a page that quotes it.', read!),
    ...part('From memory', 'Not seen in the work. They guard against slips, and prove nothing.', memory!),
    ...part('What the code is made of', 'The catalog or the formula rests on these very figures.', same!),
    '',
  ].join('\n')
}
