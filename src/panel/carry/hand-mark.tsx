import { handSign } from '../../figure/hand-sign'

/** The sign of another hand, as it stands on the map too. */
export const HandMark = ({ name }: { name: string }) => (
  <svg class="hand-mark" viewBox="-8 -8 16 16" aria-hidden="true">
    <path d={handSign(name)} />
  </svg>
)
