import { type Hundred, hundredWords } from '../../words/odds-words'

const PER_ROW = 25
const STEP = 10
const SIZE = 7

/** A hundred such circuits as small squares: filled those that work in any weather, half filled those that work only today, empty those that fail. */
export function HundredView({ hundred }: { hundred: Hundred }) {
  const { always, today } = hundred
  const square = (k: number) => {
    const x = (k % PER_ROW) * STEP + 1.5
    const y = Math.floor(k / PER_ROW) * STEP + 1.5
    const kind = k < always ? 'always' : k < always + today ? 'only-today' : 'never'
    return (
      <g key={k} class={kind}>
        <rect x={x} y={y} width={SIZE} height={SIZE} rx={1.5} />
        {kind === 'only-today' && <path d={`M${x} ${y + SIZE}h${SIZE}V${y}z`} />}
        {kind === 'never' && <path d={`M${x + 2} ${y + 2}l3 3m0 -3l-3 3`} />}
      </g>
    )
  }
  return (
    <figure class="hundred">
      <svg
        viewBox={`0 0 ${PER_ROW * STEP} ${(100 / PER_ROW) * STEP}`}
        role="img"
        aria-label={hundredWords(hundred)}
      >
        {Array.from({ length: 100 }, (_, k) => square(k))}
      </svg>
      <figcaption class="soft">
        Of a hundred: filled work in any weather, half filled only today, crossed fail.
      </figcaption>
    </figure>
  )
}
