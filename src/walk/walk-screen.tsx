import './walk.css'
import { useComputed, useSignal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import { nearestOnLine } from '../measure/nearest-on-line'
import { pointAtWireM, wireMAtGroundM } from '../measure/place-on-line'
import type { LineId } from '../plan/id'
import type { Toward } from '../report/walk-marks'
import type { Store } from '../state/store'
import { walkMarkWords } from '../words/walk-words'
import { Deeds } from './deeds'
import { type Errand, FaultAhead } from './fault-ahead'
import { useKeptTrack } from './keep-track'
import { NightButton } from './night-button'
import { ReadingForm } from './reading-form'
import { SpoolField, useSpoolInHand } from './spool-in-hand'
import { useAwakeScreen } from './stay-awake'
import { TrackKept } from './track-kept'
import { usePosition } from './use-position'
import { type WalkLine, walkLine } from './walk-line'
import { WayStrip } from './way-strip'
import { WhoField } from './who'

/** One line in a hand in the rain: where one is, what comes, and what is done there. */
export function WalkScreen({ store, id }: { store: Store; id: LineId }) {
  const dialog = useRef<HTMLDialogElement>(null)
  const toward = useSignal<Toward>('to')
  const walked = useComputed(() => walkLine(store, id, toward.value)).value
  const turn = () => {
    toward.value = toward.value === 'to' ? 'from' : 'to'
  }
  useAwakeScreen()
  useEffect(() => {
    if (dialog.current && !dialog.current.open) dialog.current.showModal()
  }, [])
  const close = () => {
    store.walking.value = null
    store.walkingTo.value = null
  }
  return (
    <dialog ref={dialog} class="walk" aria-labelledby="walk-title" onClose={close}>
      {walked ? (
        <Walk
          key={walked.toward}
          store={store}
          walked={walked}
          onTurn={turn}
          onClose={() => dialog.current?.close()}
        />
      ) : null}
    </dialog>
  )
}

interface Standing {
  readonly groundM: number
  /** What the device says of it; null where a person said where he is. */
  readonly fix: { readonly accuracyM: number; readonly offM: number } | null
}

/** Nearer than this one stands at a place, m. */
const HERE_M = 1

interface Props {
  readonly store: Store
  readonly walked: WalkLine
  /** Walks it the other way. */
  readonly onTurn: () => void
  readonly onClose: () => void
}

function Walk({ store, walked, onTurn, onClose }: Props) {
  const { plan, line, measured, marks, tags, tongue, toward, aheadM } = walked
  const { say, lineNumber } = tongue
  const goal = store.walkingTo.value
  const standing = useSignal<Standing>({
    groundM: goal === null ? lastLaidM(walked) : groundAt(walked, goal),
    fix: null,
  })
  const errand = useSignal<Errand | null>(null)
  const finding = store.fault.value
  const sought = finding && plan.circuits.get(finding.circuit)?.lines.includes(line.id) ? finding : null
  const track = useKeptTrack(store, line.id)
  const device = usePosition((fix) => {
    track.take(fix)
    const { groundM, offM } = nearestOnLine(plan, measured, line, fix.position)
    standing.value = { groundM, fix: { accuracyM: fix.accuracyM, offM } }
  })
  const leaveDevice = () => {
    device.stop()
    track.end()
  }
  const { groundM, fix } = standing.value
  const wireM = hereM(walked, groundM)
  const spool = useSpoolInHand(walked, wireM)
  const toTag = (tag: WalkLine['tags'][number] | undefined) => {
    if (!tag) return
    leaveDevice()
    standing.value = { groundM: tag.groundM, fix: null }
  }
  const farM = (mark: { readonly groundM: number }) => aheadM(groundM, mark.groundM)
  const ahead = marks.filter((mark) => farM(mark) > HERE_M)
  const [first, second] = ahead.filter(({ code }) => code !== 'tag')
  const next = (code: 'tag' | 'splice' | 'crossing') => ahead.find((mark) => mark.code === code)
  const nearest = tags.toSorted((a, b) => Math.abs(a.groundM - groundM) - Math.abs(b.groundM - groundM))[0]
  const isAtTag = nearest !== undefined && Math.abs(nearest.groundM - groundM) <= HERE_M
  const distances = (['tag', 'crossing', 'splice'] as const).flatMap((code) => {
    const mark = next(code)
    if (!mark || mark === first || mark === second) return []
    return [`${NEXT[code]} in ${say.length(farM(mark)).replace(' ', '\u00a0')}`]
  })
  return (
    <>
      <header>
        <h1 id="walk-title">
          Line {lineNumber} · {say.name(toward === 'to' ? line.from : line.to)} →{' '}
          {say.name(toward === 'to' ? line.to : line.from)}
        </h1>
        <NightButton store={store} />
        <button type="button" onClick={onClose}>
          Close
        </button>
      </header>
      <div class="way">
        <WayStrip walked={walked} finding={sought} groundM={groundM} accuracyM={fix?.accuracyM ?? null} />
        <div class="ahead">
          <p class="where" role="status">
            {isAtTag
              ? `At tag ${lineNumber}/${nearest.number}`
              : `${say.length(toward === 'to' ? groundM : measured.groundM - groundM)} out`}
            {fix && ` · ± ${say.length(fix.accuracyM)}`}
            {fix && fix.offM > Math.max(OFF_M, 2 * fix.accuracyM) && (
              <strong> You are {say.length(fix.offM)} off the line.</strong>
            )}
          </p>
          {first ? (
            <p class="next">
              <span class="far">{say.length(farM(first))}</span>
              {` to ${walkMarkWords(first, tongue)}`}
            </p>
          ) : (
            <p class="next">You are at the end of the line.</p>
          )}
          {second && (
            <p class="then">
              Then, in {say.length(farM(second))}, {walkMarkWords(second, tongue)}
            </p>
          )}
          {distances.length > 0 && <p class="then">{distances.join(' · ')}</p>}
          {sought && (
            <FaultAhead
              walked={walked}
              finding={sought}
              onGo={(next) => {
                errand.value = next
                leaveDevice()
                standing.value = { groundM: groundAt(walked, next.wireM), fix: null }
              }}
            />
          )}
          <div class="acts">
            {device.state === 'off' ? (
              <button type="button" onClick={device.start}>
                Use my position
              </button>
            ) : (
              <button type="button" onClick={leaveDevice}>
                {device.state === 'on' ? 'Go by the tags' : 'Waiting for the position…'}
              </button>
            )}
            <button type="button" onClick={() => toTag(tags.findLast((tag) => farM(tag) < -HERE_M))}>
              ‹ Tag before
            </button>
            <button type="button" onClick={() => toTag(tags.find((tag) => farM(tag) > HERE_M))}>
              Next tag ›
            </button>
            <button type="button" onClick={onTurn}>
              Walk towards {say.name(toward === 'to' ? line.from : line.to)}
            </button>
          </div>
          {device.why && <p role="alert">{device.why}</p>}
          <TrackKept kept={track} />
          {nearest && (
            <ReadingForm
              key={`${nearest.number} ${errand.value?.wireM}`}
              store={store}
              walked={walked}
              tag={nearest}
              take={errand.value?.take ?? null}
            />
          )}
          <SpoolField store={store} walked={walked} spool={spool} />
          <WhoField />
        </div>
      </div>
      <Deeds store={store} walked={walked} wireM={wireM} spool={spool} />
    </>
  )
}

const NEXT = { tag: 'Tag', crossing: 'Crossing', splice: 'End of the spool, splice,' } as const

/** Farther from the line than this one is beside it, whatever the device says of itself, m. */
const OFF_M = 30

/** Wire up to where one stands; at the far end the last tail belongs to it. */
const hereM = ({ measured }: WalkLine, groundM: number): number =>
  groundM >= measured.groundM - HERE_M
    ? measured.wireM
    : groundM <= HERE_M
      ? 0
      : wireMAtGroundM(measured, groundM)

/** Running distance along the ground to a place on the wire, m. */
const groundAt = ({ plan, line, measured }: WalkLine, wireM: number): number =>
  pointAtWireM(plan, measured, line, wireM).groundM

/** Where the wire ends that lies there from the start on: whoever comes back goes on from there. */
function lastLaidM(walked: WalkLine): number {
  const { measured, toward } = walked
  const { laid } = measured.field.done
  const own =
    toward === 'to'
      ? laid.find(({ fromM }) => fromM <= HERE_M)?.toM
      : laid.findLast(({ toM }) => toM >= measured.wireM - HERE_M)?.fromM
  if (own === undefined) return toward === 'to' ? 0 : measured.groundM
  return groundAt(walked, own)
}
