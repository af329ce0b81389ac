import { useSignal } from '@preact/signals'
import { useEffect, useMemo } from 'preact/hooks'
import { type CodeRun, codeRun, MOST_BYTES } from '../../files/carry/code-run'
import { handedOn } from '../../files/carry/kinship'
import { type LeftBehind, lightened } from '../../files/carry/light-plan'
import { packPlan } from '../../files/carry/pack-plan'
import { planLink, SAFE_LETTERS } from '../../files/carry/plan-link'
import { formatPlan } from '../../files/format-plan'
import type { Plan } from '../../plan/plan'
import type { Store } from '../../state/store'
import type { Keeper } from '../../storage/keeper'
import { planFileName } from '../../storage/save-plan-file'
import { formatCount } from '../../words/units'
import { CarryDialog } from './carry-dialog'
import { CodesOnScreen } from './codes-on-screen'

interface Props {
  readonly store: Store
  readonly keeper: Keeper | null
}

/** Ways to give the plan to somebody else with no server: a link, codes from this screen to a camera, the system's own sharing. */
export function HandOn({ store, keeper }: Props) {
  const plan = store.settled.value
  const carried = useMemo(() => handedOn(plan), [plan])
  const left = useMemo(() => lightened(carried), [carried])
  /** The same with its journal, or as much of it as a link and codes have room for. */
  const withJournal = useSignal<Plan | null>(null)
  useEffect(() => {
    withJournal.value = null
    void store.ownJournal
      .peek()
      ?.carried(left.plan, (whole) => hasRoom(whole, left))
      .then((found) => {
        withJournal.value = found
      })
  }, [left])
  const light = { ...left, plan: withJournal.value ?? left.plan }
  const wasKept = useSignal<Plan | null>(null)
  /** Codes on the screen, and nothing else beside them: a small screen has no more room. */
  const run = useSignal<CodeRun | null>(null)
  // The state that goes out is what two later plans have in common: without it they could not be merged.
  const onHanded = () => {
    if (wasKept.value === plan) return
    wasKept.value = plan
    void keeper?.keepVersion('Handed on')
  }
  return (
    <CarryDialog
      title="Hand the plan on"
      onClose={() => {
        store.carrying.value = null
      }}
    >
      {run.value ? (
        <CodesOnScreen run={run.value} />
      ) : (
        <>
          <p>
            Whoever gets it has the whole plan, places and names included. It passes through no server of
            ours: there is none.
          </p>
          <LeftBehindWords left={light} />
          <AsLink plan={light.plan} onHanded={onHanded} />
          <AsCodes
            plan={light.plan}
            onHanded={onHanded}
            onShow={(codes) => {
              run.value = codes
            }}
          />
          <AsShared plan={carried} onHanded={onHanded} />
        </>
      )}
    </CarryDialog>
  )
}

/** A journal may make what is carried so much larger, and no link longer than programs let pass; one of a plan with pictures left out does not fit it. */
const MOST_MORE = 1.3
const MOST_MORE_BYTES = 300

function hasRoom(whole: Plan, { plan, pictures, tracks }: LeftBehind): boolean {
  if (pictures + tracks > 0) return false
  const [now, then] = [packPlan(plan).length, packPlan(whole).length]
  const isShort = then <= now * MOST_MORE + MOST_MORE_BYTES
  const fitted = planLink(location.href, plan).length <= SAFE_LETTERS
  return isShort && (!fitted || planLink(location.href, whole).length <= SAFE_LETTERS)
}

/** What a link and codes have no room for. */
function LeftBehindWords({ left: { pictures, tracks } }: { left: LeftBehind }) {
  const what = [
    ...(pictures > 0 ? [formatCount(pictures, 'picture')] : []),
    ...(tracks > 0 ? [formatCount(tracks, 'walked track')] : []),
  ]
  return what.length > 0 ? (
    <p>Link and codes leave {what.join(' and ')} behind, for want of room: those go with a file.</p>
  ) : null
}

interface WayProps {
  readonly plan: Plan
  readonly onHanded: () => void
}

function AsLink({ plan, onHanded }: WayProps) {
  const said = useSignal('')
  const link = useMemo(() => planLink(location.href, plan), [plan])
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(link)
      said.value = 'The link is copied.'
      onHanded()
    } catch {
      said.value = 'The browser does not let the program copy: mark the link and copy it yourself.'
    }
  }
  return (
    <section>
      <h2>As a link</h2>
      {location.protocol === 'file:' ? (
        <p>This program was opened from a disk, and others have no such address: use the codes, or a file.</p>
      ) : link.length > SAFE_LETTERS ? (
        <p>
          The link would have {formatCount(link.length, 'letter')}: many programs cut off what is longer than{' '}
          {SAFE_LETTERS}. Use the codes, or a file.
        </p>
      ) : (
        <>
          <label>
            The link, {formatCount(link.length, 'letter')}
            <input readOnly value={link} onFocus={(event) => event.currentTarget.select()} />
          </label>
          <div class="acts">
            <button type="button" onClick={() => void copy()}>
              Copy the link
            </button>
          </div>
          <p class="soft" role="status">
            {said.value || 'The plan stands in the link itself: who passes the link on passes the plan on.'}
          </p>
        </>
      )}
    </section>
  )
}

function AsCodes({ plan, onHanded, onShow }: WayProps & { readonly onShow: (run: CodeRun) => void }) {
  const packed = useMemo(() => packPlan(plan), [plan])
  const run = useMemo(() => (packed.length > MOST_BYTES ? null : codeRun(packed)), [packed])
  return (
    <section>
      <h2>As codes on this screen</h2>
      {!run ? (
        <p>The plan is too large for that: it takes a file.</p>
      ) : (
        <>
          <p>
            The other one opens Plans, then “Take one from a screen”, and holds the camera to this screen
            until {formatCount(run.blocks, 'code')} {run.blocks === 1 ? 'has' : 'have'} come over. Any will
            do, in any order.
          </p>
          <div class="acts">
            <button
              type="button"
              onClick={() => {
                onShow(run)
                onHanded()
              }}
            >
              Show the codes
            </button>
          </div>
        </>
      )}
    </section>
  )
}

function AsShared({ plan, onHanded }: WayProps) {
  const file = useMemo(
    () => new File([formatPlan(plan)], planFileName(plan.title), { type: 'application/geo+json' }),
    [plan],
  )
  // Most systems share no .geojson; as text they do.
  const offers = [file, new File([file], `${file.name}.txt`, { type: 'text/plain' })]
  const fit = offers.find((each) => navigator.canShare?.({ files: [each] }))
  if (!fit) return null
  return (
    <section>
      <h2>As a file, by what this system shares with</h2>
      <div class="acts">
        <button
          type="button"
          onClick={() =>
            void navigator.share({ files: [fit], title: plan.title }).then(onHanded, () => undefined)
          }
        >
          Share the file…
        </button>
      </div>
    </section>
  )
}
