import { type Check, differencePct } from './check'

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

/** The list of works, what is checked against each, and by how much the project's figures differ at worst: Markdown. */
export function sourcesList(
  subjects: readonly { readonly subject: string; readonly list: readonly Check[] }[],
): string {
  const all = subjects.flatMap(({ list }) => list)
  const works = new Set(all.map(({ source }) => source.work)).size
  return [
    '# Published figures that the program is held to',
    '',
    `${all.length} figures of ${works} works. Made by \`node scripts/list-sources.mjs\`; a test fails when it is out of date.`,
    'The percentage is the worst difference between a published figure and the one computed. "From memory" marks figures that were',
    'not read in the work itself; a bound is a figure that the work only calls the most or the least allowed.',
    ...subjects.flatMap(({ subject, list }) => ['', `## ${subject}`, '', ...worksOf(list)]),
    '',
  ].join('\n')
}
