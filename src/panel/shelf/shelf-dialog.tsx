import '../wide-dialog.css'
import './shelf.css'
import { useSignal } from '@preact/signals'
import { useEffect, useId, useMemo, useRef } from 'preact/hooks'
import { shelfJobs } from '../../jobs/shelf-jobs'
import type { Store } from '../../state/store'
import { keepShelf } from '../../storage/keep-shelf'
import { NetCards } from './net-cards'
import { PlacesAndTalk } from './places-and-talk'
import { ShelfLists } from './shelf-lists'
import type { Sought } from './sought'
import { createWanted, wantedShelf } from './wanted'

const NOTHING = { nets: [], burdens: new Map(), missing: [], more: [], says: '' }

const STOPPED = 'Stopped: these are the best so far, and others may be better.'

/** What can be done with what there is: the shelf, the places, who must reach whom, and the nets that can be made of it. */
export function ShelfDialog({ store }: { store: Store }) {
  const dialog = useRef<HTMLDialogElement>(null)
  const found = useRef<HTMLDivElement>(null)
  const title = useId()
  const wanted = useMemo(() => createWanted(store), [])
  const sought = useSignal<Sought | null>(null)
  const isSeeking = useSignal(false)
  const refusal = useSignal('')
  const jobs = useMemo(() => shelfJobs(store.ground.peek()?.grids ?? []), [])
  const search = useRef<AbortController | null>(null)
  useEffect(() => {
    if (dialog.current && !dialog.current.open) dialog.current.showModal()
    const stop = keepShelf(store)
    return () => {
      stop()
      jobs.dispose()
    }
  }, [])

  const seek = async () => {
    const shelf = wantedShelf(store, wanted)
    refusal.value = shelf.ok ? '' : shelf.problems.map(({ message }) => message).join(' ')
    if (!shelf.ok) return
    const stopper = new AbortController()
    search.current = stopper
    isSeeking.value = true
    const onMap = wanted.from.peek() === 'map'
    sought.value = { ...NOTHING, onMap }
    const answer = await jobs.ask(
      'nets',
      {
        shelf: shelf.value,
        system: store.units.peek(),
        going: onMap
          ? { hazards: [...store.settled.peek().hazards.values()], weights: store.routeWeights.peek() }
          : null,
      },
      {
        signal: stopper.signal,
        onPart: (news) => {
          if (news.kind === 'so-far') sought.value = { ...NOTHING, onMap, nets: news.nets }
        },
      },
    )
    isSeeking.value = false
    if (!answer) return
    if (!answer.ok) {
      refusal.value = answer.problems[0]!.message
      return
    }
    const { nets, missing, more, search: how } = answer.value
    sought.value = { ...NOTHING, onMap, nets, missing, more, says: how.says }
    await jobs.ask(
      'burdens',
      { plans: nets.map(({ plan }) => plan) },
      {
        signal: stopper.signal,
        onPart: (news) => {
          const now = sought.peek()
          if (news.kind === 'burden' && now)
            sought.value = { ...now, burdens: new Map(now.burdens).set(news.net, news.burden) }
        },
      },
    )
  }
  const close = () => dialog.current?.close()
  const begin = () => {
    // On a small screen what is found stands below all the rest.
    found.current?.scrollIntoView({ block: 'nearest' })
    void seek()
  }

  return (
    <dialog
      ref={dialog}
      class="wide-dialog shelf"
      aria-labelledby={title}
      onClose={() => {
        search.current?.abort()
        store.shelfIsOpen.value = false
      }}
    >
      <header>
        <h1 id={title}>What can we do with what we have?</h1>
        <button type="button" onClick={close}>
          Close
        </button>
      </header>
      <div class="sides">
        <div class="have">
          <ShelfLists store={store} />
          <PlacesAndTalk store={store} wanted={wanted} />
          {refusal.value && (
            <p class="fails" role="alert">
              {refusal.value}
            </p>
          )}
          <div class="acts seek">
            <button type="button" class="main" disabled={isSeeking.value} onClick={begin}>
              Find nets
            </button>
            {isSeeking.value && (
              <button
                type="button"
                onClick={() => {
                  search.current?.abort()
                  isSeeking.value = false
                  const now = sought.peek()
                  if (now) sought.value = { ...now, says: STOPPED }
                }}
              >
                Stop
              </button>
            )}
          </div>
        </div>
        <div class="found" ref={found} aria-live="polite" aria-busy={isSeeking.value}>
          {isSeeking.value && <p class="soft">Seeking nets; the best so far stand here.</p>}
          {sought.value ? (
            <NetCards store={store} sought={sought.value} isSeeking={isSeeking.value} onTaken={close} />
          ) : (
            <p class="soft">
              Say what there is, where telephones must stand, and who must reach whom. Each net that can be
              made of it will stand here, the best first, proved as any plan is.
            </p>
          )}
        </div>
      </div>
    </dialog>
  )
}
