import './field.css'
import { useSignal } from '@preact/signals'
import type { ComponentChildren, TargetedEvent } from 'preact'
import { useEffect, useRef } from 'preact/hooks'
import { asTyped, startTyping, type Typing } from '../state/typing'
import { onLeaving } from '../storage/keeper'

type TextControl = HTMLInputElement | HTMLTextAreaElement

interface Props {
  readonly id: string
  readonly label: string
  /** Lets the label be read, not seen: in a table its column's heading stands for it. */
  readonly bare?: boolean | undefined
  /** The sentence that refuses what was typed. */
  readonly why?: string | undefined
  readonly children: ComponentChildren
}

/** A label, what stands in the field, and below it the sentence that refuses it. */
export function Field({ id, label, bare, why, children }: Props) {
  return (
    <div class={bare ? 'field bare' : 'field'}>
      <label for={id} class={bare ? 'unseen' : undefined}>
        {label}
      </label>
      {children}
      {why !== undefined && (
        <p id={`${id}-why`} class="refusal" role="alert">
          {why}
        </p>
      )}
    </div>
  )
}

/** Typed text is kept this long after its first letter: the rest of a second is for the store, and for a machine that has other things to do. */
const KEEP_MS = 250
/** A hand that rests so long has paused. */
const PAUSE_MS = 500

/**
 * What a person types is kept within a second, as one step of undo. It stays in the field as typed, though the figures around it
 * change. What the plan refuses stays too, and is told when the hand leaves the field. Escape puts back what was there before.
 *
 * @param kept what the plan holds, as text
 * @param take hands the text to the plan; a sentence in return refuses it
 * @param pause waits for the hand to pause, as a number half typed is another number
 */
export function useTypedText(
  id: string,
  kept: string,
  take: (text: string) => string | undefined,
  { pause = false }: { readonly pause?: boolean } = {},
) {
  const typed = useSignal<string | null>(null)
  const why = useSignal<string | undefined>(undefined)
  /** What is typed and not yet kept, and the typing that it belongs to. */
  const hand = useRef<{
    typing: Typing | null
    keep: (() => void) | null
    timer: number
    given: string | null
  }>({
    typing: null,
    keep: null,
    timer: 0,
    given: null,
  }).current

  const forget = () => {
    clearTimeout(hand.timer)
    hand.timer = 0
    hand.keep = null
  }
  const keepNow = () => {
    const { keep } = hand
    forget()
    keep?.()
  }
  const give = (text: string) => {
    hand.typing ??= startTyping()
    const refusal = asTyped(hand.typing, () => take(text))
    hand.given = refusal === undefined ? text : null
    return refusal
  }
  const release = () => {
    keepNow()
    hand.typing = null
    hand.given = null
    if (why.value === undefined) typed.value = null
  }
  useEffect(() => {
    const onHide = () => {
      if (document.visibilityState === 'hidden') keepNow()
    }
    // Before the store of plans hears it, which writes what it then has.
    const first = { capture: true }
    const stopHearing = onLeaving(keepNow)
    addEventListener('visibilitychange', onHide, first)
    return () => {
      keepNow()
      stopHearing()
      removeEventListener('visibilitychange', onHide, first)
    }
  }, [])

  return {
    why: why.value,
    input: {
      id,
      value: typed.value ?? kept,
      'aria-invalid': why.value === undefined ? undefined : ('true' as const),
      'aria-describedby': why.value === undefined ? undefined : `${id}-why`,
      onInput: (event: TargetedEvent<TextControl>) => {
        const text = event.currentTarget.value
        typed.value = text
        hand.keep = () => {
          // What cannot be is told when the hand leaves the field, not while it is on its way.
          if (give(text) === undefined) why.value = undefined
        }
        if (hand.timer && !pause) return
        clearTimeout(hand.timer)
        hand.timer = setTimeout(keepNow, pause ? PAUSE_MS : KEEP_MS) as unknown as number
      },
      onChange: (event: TargetedEvent<TextControl>) => {
        forget()
        const { value } = event.currentTarget
        typed.value = value
        // What the plan has taken is not given twice: somebody else may have changed it since.
        why.value = value === hand.given ? undefined : give(value)
        release()
      },
      onBlur: release,
      onKeyDown: (event: TargetedEvent<TextControl, KeyboardEvent>) => {
        if (event.key !== 'Escape') return
        forget()
        hand.typing?.takeBack()
        hand.typing = null
        event.currentTarget.value = kept
        typed.value = null
        why.value = undefined
      },
    },
  }
}
