import './look.css'
import './page.css'
import { computed, effect, signal } from '@preact/signals'
import { render } from 'preact'
import { terrainJobs } from './jobs/terrain-jobs'
import { mountMap } from './map/mount-map'
import { followShortcuts } from './panel/bar/shortcuts'
import { DropPlace } from './panel/drop-place'
import { FailureBanner } from './panel/failure-banner'
import { Fallible } from './panel/fallible'
import { WorkBar } from './panel/ground/work-bar'
import { loadWhenShown } from './panel/load-when-shown'
import { Notice } from './panel/notice'
import { Panel } from './panel/panel'
import { TopBar } from './panel/top-bar'
import { followHand } from './state/follow-hand'
import { sourceInUse } from './state/online-tiles'
import { searchRemedies } from './state/remedy-search'
import { createStore } from './state/store'
import { watchFailures } from './state/watch-failures'
import { takeDroppedFiles } from './storage/choose-files'
import { keepDrafts } from './storage/keep-drafts'
import type { Keeper } from './storage/keeper'
import { saveTable } from './storage/save-table'
import { keepSettings } from './storage/settings'

const ProblemList = loadWhenShown(async () => (await import('./panel/problem-list')).ProblemList)
const HelpDialog = loadWhenShown(async () => (await import('./panel/help/help-dialog')).HelpDialog)
const HazardImport = loadWhenShown(async () => (await import('./panel/ground/hazard-import')).HazardImport)

const ShelfDialog = loadWhenShown(async () => (await import('./panel/shelf/shelf-dialog')).ShelfDialog)
const CarryLayer = loadWhenShown(async () => (await import('./panel/carry/carry-layer')).CarryLayer)
const WalkScreen = loadWhenShown(async () => (await import('./walk/walk-screen')).WalkScreen)

const store = createStore(undefined, followHand())
const nothingYet = store.opened.peek()
const keeper = signal<Keeper | null>(null)
const papers = signal<typeof import('./sheet/papers').Papers | null>(null)

async function openDemo() {
  const demo = await (await import('./storage/demo')).loadDemo()
  if (demo) store.open(demo)
}

/** What comes over the map now and then asks for its pieces in a place of their own. */
const isCarrying = computed(() =>
  [
    ...[store.carrying, store.sharing, store.received, store.importedPlaces],
    ...[store.mapsAreOpen, store.fitting, store.broughtBack],
  ].some((each) => each.value),
)

let opener: Element | null = null

async function openPapers() {
  opener = document.activeElement
  papers.value = (await import('./sheet/papers')).Papers
}

function MapScreen() {
  return (
    <>
      <TopBar store={store} keeper={keeper.value} onDemo={openDemo} onPapers={openPapers} />
      <Fallible store={store} what="The side panel">
        <Panel store={store} />
      </Fallible>
      <Notice store={store} />
      <DropPlace store={store} />
      <WorkBar store={store} />
      {store.imported.value && <HazardImport store={store} />}
      {store.refusedFile.value && <ProblemList store={store} />}
      {store.walking.value && <WalkScreen store={store} id={store.walking.value} />}
      {isCarrying.value && <CarryLayer store={store} keeper={keeper.value} />}
      {store.shelfIsOpen.value && <ShelfDialog store={store} />}
      {store.helpIsOpen.value && <HelpDialog store={store} />}
    </>
  )
}

function closePapers() {
  papers.value = null
  if (opener instanceof HTMLElement) opener.focus()
}

function PapersLayer() {
  const Papers = papers.value
  return (
    Papers && (
      <Fallible store={store} what="The papers" onClose={closePapers}>
        <Papers store={store} onClose={closePapers} onSaveTable={saveTable} />
      </Fallible>
    )
  )
}

const element = (id: string) => document.getElementById(id)!

watchFailures(store.failure)
keepSettings(store)
void mountMap(element('map'), store)
render(<MapScreen />, element('table'))
render(<PapersLayer />, element('papers'))
render(<FailureBanner store={store} />, element('failures'))
document.documentElement.dataset.started = ''
document.querySelector('#start:not(.failed)')?.remove()
effect(() => {
  for (const id of ['skip', 'table', 'map']) element(id).inert = papers.value !== null
})
followShortcuts(store, () => papers.value !== null)
void import('./state/follow-field').then(({ followField }) => followField(store))
searchRemedies(store)
takeDroppedFiles(
  (files) =>
    void import('./storage/open-dropped').then(({ openDroppedFiles }) =>
      openDroppedFiles(store, files, async (plan) => (await keeper.value?.keepAside(plan)) ?? false),
    ),
  (areHeld) => {
    store.dropping.value = areHeld
    // While a hand still holds them, what opens them is fetched.
    if (areHeld) void import('./storage/open-dropped').catch(() => undefined)
  },
)

keeper.value = await keepDrafts(store)
if (store.opened.peek() === nothingYet) await openDemo()
const { takeLinkedPlan } = await import('./storage/linked-plan')
takeLinkedPlan(store)
void import('./panel/carry/follow-sharing').then(({ followSharing }) => followSharing(store, keeper.peek()!))
if (import.meta.env.PROD)
  void import('./storage/keep-release').then(({ keepRelease }) => keepRelease(store.release))

const { keepEntries } = await import('./storage/keep-entries')
keepEntries(store)
const [{ followBack }, { followOverlays }] = await Promise.all([
  import('./state/back-button'),
  import('./panel/open-overlays'),
])
const overlays = followOverlays()
followBack([
  { isOpen: () => overlays.open.value.length > 0, close: overlays.closeLast },
  { isOpen: () => store.mapMenu.value !== null, close: () => store.mapMenu.peek()?.close() },
  { isOpen: () => papers.value !== null, close: closePapers },
  {
    isOpen: () => store.selection.value !== null,
    close: () => {
      store.selection.value = null
    },
  },
])

// After the first screen: a map projection weighs more than a plan.
const [{ demoGround }, { keepGround }, { onlineGround }] = await Promise.all([
  import('./storage/demo'),
  import('./storage/keep-ground'),
  import('./storage/online-ground'),
])
// Two, so that nothing waits for a long reading.
const [reader, seeker] = [terrainJobs(), terrainJobs()]
effect(() => seeker.setGrids(store.ground.value?.grids ?? []))
const server = sourceInUse('elevation')
const others = [demoGround(reader), ...(server ? [onlineGround(server)] : [])]
const ground = await keepGround(store, reader, others)
const { drawRelief, suggestRoute, nearRoutes, suggestNets } = seeker
store.groundWorker.value = { ...ground, drawRelief, suggestRoute, nearRoutes, suggestNets }
const [{ keepMaps }, { mapsJobs }] = await Promise.all([
  import('./storage/keep-maps'),
  import('./jobs/maps/maps-jobs'),
])
store.mapsKeeper.value = await keepMaps(store, mapsJobs())
