import { useSignal } from '@preact/signals'
import { useEffect, useMemo } from 'preact/hooks'
import { pictureOf } from '../../figure/code-picture'
import type { CodeRun } from '../../files/carry/code-run'
import { formatCount } from '../../words/units'
import { SelectFieldOf } from '../select-field'

/** The largest symbol there is: what it must hold says how large it becomes. */
const ANY_VERSION = 40
/** Codes a second. Few enough that nothing flashes more than three times a second (WCAG 2.2, 2.3.1), and a slow camera keeps up. */
const PACES = ['1', '2', '3']
/** Numbers go on so far past the first run before they begin again: each is as good as any other. */
const RUNS = 8

/** The codes of a run, one after the other, again and again, with new ones each time round. */
export function CodesOnScreen({ run }: { run: CodeRun }) {
  const number = useSignal(0)
  const pace = useSignal('3')
  const isStill = useSignal(run.blocks === 1)
  useEffect(() => {
    if (isStill.value) return
    const timer = setInterval(() => {
      number.value = (number.peek() + 1) % (run.blocks * RUNS)
    }, 1000 / Number(pace.value))
    return () => clearInterval(timer)
  }, [isStill.value, pace.value, run])
  const picture = useMemo(() => pictureOf(run.text(number.value), ANY_VERSION), [run, number.value])
  return (
    <>
      <svg
        class="code"
        viewBox={`0 0 ${picture.side} ${picture.side}`}
        role="img"
        aria-label={`Code ${number.value + 1}`}
        data-number={number.value}
      >
        <path d={picture.path} shape-rendering="crispEdges" />
      </svg>
      {run.blocks > 1 && (
        <>
          <p>
            Code {number.value + 1}; {formatCount(run.blocks, 'code')} are needed, whichever they are.
          </p>
          <div class="acts">
            <button
              type="button"
              onClick={() => {
                isStill.value = !isStill.value
              }}
            >
              {isStill.value ? 'Go on' : 'Hold'}
            </button>
            <button
              type="button"
              onClick={() => {
                isStill.value = true
                number.value += 1
              }}
            >
              Next code
            </button>
            <SelectFieldOf
              label="Codes a second"
              of={pace}
              options={PACES.map((each) => ({ value: each, text: each }))}
            />
          </div>
        </>
      )}
    </>
  )
}
