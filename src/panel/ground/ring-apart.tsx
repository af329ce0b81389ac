import type { Store } from '../../state/store'
import { ringApartSentences } from '../../words/ring-apart-words'
import { VerdictMark } from '../verdict-mark'
import type { Shape } from './net-shapes'

/** Whether a ring outlives a single break, or which stretch two of its lines share. */
export function RingApart({ store, shape }: { store: Store; shape: Shape | undefined }) {
  if (!shape?.apart) return null
  return (
    <>
      {ringApartSentences(shape.apart, store.tongue.value).map((sentence) => (
        <p key={sentence}>
          <VerdictMark verdict={shape.apart?.close.length ? 'thin' : 'works'} bare /> {sentence}
        </p>
      ))}
    </>
  )
}
