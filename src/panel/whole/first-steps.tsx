import type { Store } from '../../state/store'

/** What leads to a first net, each step ticked as soon as it is done. */
export function FirstSteps({ store }: { store: Store }) {
  const { stations, lines, circuits } = store.plan.value
  const hasTwoSets = [...circuits.values()].some(({ sets }) => sets.size >= 2)
  const steps = [
    { isDone: stations.size > 0, words: 'Find your ground: drag the map, or press Go to at its foot.' },
    {
      isDone: lines.size > 0,
      words:
        'Take the tool Line, click where the first telephone stands, then where the second does, and press Done.',
    },
    {
      isDone: hasTwoSets,
      words: 'Choose a telephone for each end, and the wire between them, beside the map.',
    },
    { isDone: false, words: 'Read whether it rings and talks, and what would mend it.' },
  ]
  return (
    <section aria-label="First steps">
      <ol class="first-steps">
        {steps.map(({ isDone, words }) => (
          <li key={words} class={isDone ? 'soft' : undefined}>
            {isDone && '✓ done: '}
            {words}
          </li>
        ))}
      </ol>
      <p>
        Or begin from what you have: telephones, wire and batteries, and how far apart they must stand. No map
        is needed.
      </p>
      <div class="acts">
        <button
          type="button"
          onClick={() => {
            store.shelfIsOpen.value = true
          }}
        >
          What can we do with what we have?
        </button>
      </div>
      <button
        type="button"
        class="quiet"
        onClick={() => {
          store.firstSteps.value = 'away'
        }}
      >
        Hide these steps
      </button>
    </section>
  )
}
