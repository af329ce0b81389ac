import { useSignal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import { pictureSize } from '../../files/picture-size'
import type { HalfMark } from './half-mark'

interface Props {
  readonly picture: Blob
  readonly marks: readonly HalfMark[]
  readonly picked: number
  readonly onAdd: (x: number, y: number) => void
  readonly onMove: (index: number, x: number, y: number) => void
  readonly onPick: (index: number) => void
}

/** Dots of the picture that are shown, at most: a larger one is brought down to so many, and counted in its own all the same. */
const SHOWN_DOTS = 12e6
const MOST_DOTS = 80e6
const ZOOMS = [1, 2, 4] as const
const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
}

/** The picture with its marks: pressed where a mark is to be, or moved by arrow keys. */
export function FitView({ picture, marks, picked, onAdd, onMove, onPick }: Props) {
  const canvas = useRef<HTMLCanvasElement>(null)
  const view = useRef<HTMLDivElement>(null)
  const size = useSignal<{ readonly width: number; readonly height: number } | null>(null)
  const fault = useSignal('')
  const zoom = useSignal<(typeof ZOOMS)[number]>(1)
  const widthPx = useSignal(320)

  useEffect(() => {
    let isGone = false
    const show = async () => {
      const said = pictureSize(await picture.slice(0, 1e6).arrayBuffer())
      if (!said || said.width * said.height > MOST_DOTS) {
        fault.value = said
          ? `The picture has ${Math.round((said.width * said.height) / 1e6)} million dots, and ${MOST_DOTS / 1e6} million are read at most: save it smaller.`
          : 'The file is no PNG, JPEG or WebP picture, or is broken.'
        return
      }
      const shrink = Math.min(1, Math.sqrt(SHOWN_DOTS / (said.width * said.height)))
      const options = shrink < 1 ? { resizeWidth: Math.round(said.width * shrink) } : {}
      const bitmap = await createImageBitmap(picture, { imageOrientation: 'from-image', ...options }).catch(
        () => null,
      )
      if (isGone || !canvas.current) return
      if (!bitmap) {
        fault.value = 'The picture is broken: it cannot be unpacked.'
        return
      }
      canvas.current.width = bitmap.width
      canvas.current.height = bitmap.height
      widthPx.value = view.current?.clientWidth || 320
      size.value = { width: bitmap.width / shrink, height: bitmap.height / shrink }
      canvas.current.getContext('bitmaprenderer')?.transferFromImageBitmap(bitmap)
    }
    void show()
    return () => {
      isGone = true
    }
  }, [picture])

  const scale = size.value ? (widthPx.value / size.value.width) * zoom.value : 1
  const placeOf = (event: MouseEvent): readonly [number, number] => {
    const box = canvas.current!.getBoundingClientRect()
    return [(event.clientX - box.left) / scale, (event.clientY - box.top) / scale]
  }
  const middle = (): readonly [number, number] => {
    const { scrollLeft, scrollTop, clientWidth, clientHeight } = view.current!
    return [(scrollLeft + clientWidth / 2) / scale, (scrollTop + clientHeight / 2) / scale]
  }
  const step = (event: KeyboardEvent, index: number) => {
    const arrow = ARROWS[event.key]
    const mark = marks[index]
    if (!arrow || !mark) return
    event.preventDefault()
    const px = event.shiftKey ? 10 : 1
    onMove(index, mark.x + arrow[0] * px, mark.y + arrow[1] * px)
  }
  if (fault.value) return <p role="alert">{fault.value}</p>
  return (
    <>
      <div class="fit-view" ref={view}>
        <canvas
          ref={canvas}
          style={
            size.value
              ? { width: `${size.value.width * scale}px`, height: `${size.value.height * scale}px` }
              : {}
          }
          onClick={(event) => onAdd(...placeOf(event))}
        />
        {marks.map((mark, i) => (
          <button
            key={i}
            type="button"
            class="mark"
            style={{ left: `${mark.x * scale}px`, top: `${mark.y * scale}px` }}
            aria-label={`Mark ${i + 1}: arrow keys move it, with Shift by ten dots`}
            aria-pressed={i === picked}
            onClick={() => onPick(i)}
            onKeyDown={(event) => step(event, i)}
          >
            {i + 1}
          </button>
        ))}
      </div>
      <div class="acts">
        {ZOOMS.map((each) => (
          <button
            key={each}
            type="button"
            aria-pressed={zoom.value === each}
            onClick={() => {
              zoom.value = each
            }}
          >
            {each === 1 ? 'Whole picture' : `${each} times as large`}
          </button>
        ))}
        <button type="button" disabled={!size.value} onClick={() => onAdd(...middle())}>
          Mark in the middle
        </button>
      </div>
    </>
  )
}
