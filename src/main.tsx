import './look.css'
import { computed, effect, signal } from '@preact/signals'
import { render } from 'preact'
import { mountMap } from './map/mount-map'
import { followShortcuts } from './panel/bar/shortcuts'
import { Notice } from './panel/notice'
import { Panel } from './panel/panel'
import { ProblemList } from './panel/problem-list'
import { TopBar } from './panel/top-bar'
import { searchRemedies } from './state/remedy-search'
import { createStore } from './state/store'
import { liesOnDemo, loadDemo, loadDemoGround } from './storage/demo'
import { type Keeper, keepDrafts } from './storage/keep-drafts'
import { openPlanFile, takeDroppedFiles } from './storage/open-save'
import { keepSettings } from './storage/settings'

const store = createStore()
const nothingYet = store.opened.peek()
const keeper = signal<Keeper | null>(null)
const papers = signal<typeof import('./sheet/papers').Papers | null>(null)

async function openDemo() {
  const demo = await loadDemo()
  if (demo) store.open(demo)
}

async function openPapers() {
  papers.value = (await import('./sheet/papers')).Papers
}

function Table() {
  return (
    <>
      <TopBar store={store} keeper={keeper.value} onDemo={openDemo} onPapers={openPapers} />
      <Panel store={store} />
      <Notice store={store} />
      <ProblemList store={store} />
    </>
  )
}

function Desk() {
  const Papers = papers.value
  const close = () => {
    papers.value = null
  }
  return Papers && <Papers store={store} onClose={close} />
}

const element = (id: string) => document.getElementById(id)!

keepSettings(store)
mountMap(element('map'), store)
render(<Table />, element('table'))
render(<Desk />, element('papers'))
effect(() => {
  for (const id of ['table', 'map']) element(id).inert = papers.value !== null
})
followShortcuts(store)
searchRemedies(store)
takeDroppedFiles((file) => void openPlanFile(store, file))

const onDemo = computed(() => liesOnDemo(store.settled.value))
effect(() => {
  if (onDemo.value) {
    void loadDemoGround().then((ground) => {
      if (onDemo.peek()) store.ground.value = ground
    })
  } else store.ground.value = undefined
})

keeper.value = await keepDrafts(store)
if (store.opened.peek() === nothingYet) await openDemo()

if (import.meta.env.PROD) void navigator.serviceWorker?.register('./sw.js')
