import type { Verdict } from '../budget/rows'

const SHAPES: Record<Verdict, preact.JSX.Element> = {
  works: (
    <g fill="none" stroke="currentColor" stroke-width="2">
      <circle cx="8" cy="8" r="7" />
      <path d="M4.5 8.5l2.5 2.5 4.5-5.5" />
    </g>
  ),
  thin: (
    <g stroke="currentColor" stroke-width="2" stroke-linejoin="round">
      <path d="M8 1.5L15 14.5H1z" fill="none" />
      <path d="M4.5 8.2h7L15 14.5H1z" fill="currentColor" stroke="none" />
    </g>
  ),
  fails: (
    <g fill="none" stroke="currentColor" stroke-width="2">
      <path d="M1.5 1.5h13v13h-13z" />
      <path d="M4.5 4.5l7 7m0-7l-7 7" />
    </g>
  ),
}

const UNFINISHED = (
  <g fill="none" stroke="currentColor" stroke-width="2">
    <circle cx="8" cy="8" r="7" stroke-dasharray="3 2.5" />
  </g>
)

interface Props {
  readonly verdict: Verdict
  /** The word is read aloud, not seen. */
  readonly bare?: boolean
  /** It fails only because the circuit lacks a set, or what feeds one. */
  readonly unfinished?: boolean
}

/** A verdict as a shape and a word; the colour only repeats them. */
export function VerdictMark({ verdict, bare, unfinished }: Props) {
  return (
    <span class={`verdict ${unfinished ? 'unfinished' : verdict}`}>
      <svg viewBox="0 0 16 16" aria-hidden="true">
        {unfinished ? UNFINISHED : SHAPES[verdict]}
      </svg>
      <span class={bare ? 'unseen' : undefined}>{unfinished ? 'not finished' : verdict}</span>
    </span>
  )
}
