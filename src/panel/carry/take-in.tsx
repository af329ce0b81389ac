import { type Signal, useSignal } from '@preact/signals'
import { useEffect, useMemo, useRef } from 'preact/hooks'
import { carriedOfFragment } from '../../files/carry/carried'
import { CodeCollector, type Received } from '../../files/carry/code-run'
import { unpackPlan } from '../../files/carry/pack-plan'
import { codeJobs } from '../../jobs/code-jobs'
import type { Result } from '../../problem'
import type { ReceivedThing } from '../../state/open-things'
import type { Store } from '../../state/store'
import { chooseFiles } from '../../storage/choose-files'
import { CarryDialog } from './carry-dialog'

/** Takes a plan from the codes on another screen or on paper, by the camera or from pictures. */
export function TakeIn({ store }: { store: Store }) {
  const received = useSignal<Received | null>(null)
  const said = useSignal('')
  const isWatching = useSignal(false)
  const jobs = useMemo(codeJobs, [])
  const collector = useMemo(() => new CodeCollector(), [])
  useEffect(() => () => jobs.dispose(), [])

  const end = (result: Result<ReceivedThing>) => {
    isWatching.value = false
    if (result.ok) {
      store.carrying.value = null
      store.received.value = result.value
    } else said.value = result.problems[0]!.message
  }
  /** Whether the plan is whole. */
  const take = (text: string): boolean => {
    const linked = carriedOfFragment(/#.*/s.exec(text)?.[0] ?? '')
    if (linked) {
      end(linked)
      return true
    }
    const now = collector.take(text)
    if (!now) {
      said.value = 'That is a code, but none with a plan in it.'
      return false
    }
    said.value = ''
    received.value = now
    if (now.bytes) {
      const plan = unpackPlan(now.bytes)
      end(plan.ok ? { ok: true, value: { plan: plan.value } } : plan)
    }
    return now.bytes !== undefined
  }
  const look = async (picture: ImageData | Blob): Promise<boolean> => {
    const result = await jobs.ask('read', picture)
    if (!result) return false
    if (!result.ok) said.value = result.problems[0]!.message
    return result.ok && result.value.some(take)
  }
  const lookAtFiles = async (files: readonly File[]) => {
    for (const file of files) if (await look(file)) return
    if (!received.value && !said.value)
      said.value = 'There is no code in that picture, or it is too small or blurred.'
  }

  return (
    <CarryDialog
      title="Take a plan from a screen or a paper"
      onClose={() => {
        store.carrying.value = null
      }}
    >
      {isWatching.value ? (
        <Camera look={look} said={said} />
      ) : (
        <div class="acts">
          <button
            type="button"
            onClick={() => {
              said.value = ''
              isWatching.value = true
            }}
          >
            Use the camera
          </button>
          <button type="button" onClick={() => chooseFiles('image/*', (files) => void lookAtFiles(files))}>
            From pictures…
          </button>
        </div>
      )}
      {received.value && (
        <label>
          {received.value.have} of {received.value.need} codes are here
          <progress value={received.value.have} max={received.value.need} />
        </label>
      )}
      <p role="status">
        {said.value ||
          (isWatching.value
            ? 'Hold the camera so that the code fills most of the picture.'
            : 'The pictures stay on this machine.')}
      </p>
    </CarryDialog>
  )
}

interface CameraProps {
  /** Looks at a picture; whether nothing more is wanted. */
  readonly look: (picture: ImageData) => Promise<boolean>
  readonly said: Signal<string>
}

/** What the camera sees, looked at again and again until the plan is whole or the person turns away. */
function Camera({ look, said }: CameraProps) {
  const video = useRef<HTMLVideoElement>(null)
  useEffect(() => {
    let isOver = false
    let stream: MediaStream | undefined
    const watch = async () => {
      if (!navigator.mediaDevices) {
        said.value =
          'Browsers give the camera only to pages over https, or to a file on this machine. Photograph the codes, and take them from the pictures.'
        return
      }
      try {
        stream = await navigator.mediaDevices.getUserMedia({
          video: { facingMode: 'environment', width: { ideal: 1280 }, height: { ideal: 720 } },
        })
      } catch {
        said.value = 'There is no camera, or the browser was told not to give it to this page.'
        return
      }
      const shown = video.current
      if (isOver || !shown) return
      shown.srcObject = stream
      await shown.play().catch(() => undefined)
      const canvas = document.createElement('canvas')
      const pen = canvas.getContext('2d', { willReadFrequently: true })!
      while (!isOver) {
        await new Promise(requestAnimationFrame)
        if (shown.videoWidth === 0) continue
        canvas.width = shown.videoWidth
        canvas.height = shown.videoHeight
        pen.drawImage(shown, 0, 0)
        if (await look(pen.getImageData(0, 0, canvas.width, canvas.height))) return
      }
    }
    void watch()
    return () => {
      isOver = true
      for (const track of stream?.getTracks() ?? []) track.stop()
    }
  }, [])
  return <video ref={video} muted playsInline aria-label="What the camera sees" />
}
