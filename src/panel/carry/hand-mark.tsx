import '../../figure/hand-tones.css'
import type { HandSign } from '../../figure/hand-sign'

/** The sign of a hand, as it stands on the map too. */
export const HandMark = ({ sign: { path, tone, letters } }: { sign: HandSign }) => (
  <svg class={`hand-mark hand-shape hand-tone-${tone}`} viewBox="-8 -8 16 16" aria-hidden="true">
    <path d={path} />
    {letters && <text y="2.4">{letters}</text>}
  </svg>
)
