import { signal } from '@preact/signals'
import 'leaflet/dist/leaflet.css'
import './map.css'
import './backdrop/backdrop.css'
import './layers/layers.css'
import './layers/hazards.css'
import './layers/faults.css'
import './frame/frame.css'
import './frame/small-frame.css'
import { HAZARD_KINDS } from '../plan/hazard-schema'
import type { Store } from '../state/store'
import type { Bench } from './bench'
import { showFoot } from './frame/show-foot'
import { showSpeaker } from './frame/show-speaker'
import { showHazards } from './layers/show-hazards'
import { showLines } from './layers/show-lines'
import { showNames } from './layers/show-names'
import { showStations } from './layers/show-stations'
import { fitOpenedPlans } from './view/fit-plan'
import { gatheredStations } from './view/gather-stations'
import { createMapView } from './view/map-view'
import { movingThings } from './view/moving'
import { showRequestedPlace } from './view/show-requested-place'

/** Puts the map into an element and keeps it in step with the store; once the tools are there, gives how to take it away. */
export async function mountMap(element: HTMLElement, store: Store): Promise<() => void> {
  const container = document.createElement('div')
  container.className = 'map-canvas'
  element.classList.add('map')
  element.append(container)
  const view = createMapView(container)
  const speaker = showSpeaker(view, store)
  const moving = movingThings(store)
  const bench: Bench = {
    store,
    view,
    picked: signal(null),
    ghost: signal(null),
    moving,
    gathered: gatheredStations(store, view, moving),
    names: signal([]),
    lay: signal('surface'),
    hazardKind: signal(HAZARD_KINDS[0]),
    say: speaker.say,
  }

  const layers = [
    showHazards(bench),
    showLines(bench),
    showStations(bench),
    showNames(bench),
    showRequestedPlace(view),
  ]

  const foot = showFoot(bench)
  const stopFitting = fitOpenedPlans(view, store)
  // A plan is looked at before it is worked on: the tools come with a script of their own, and so does what lies beneath the net.
  const [{ workOnMap }, { showBackdrop }] = await Promise.all([
    import('./work-on-map'),
    import('./backdrop/show-backdrop'),
  ])
  layers.push(showBackdrop(bench))
  const stopWork = workOnMap(bench, foot)

  return () => {
    stopWork()
    stopFitting()
    for (const part of [foot, speaker]) part.remove()
    for (const remove of layers) remove()
    view.remove()
    container.remove()
    element.classList.remove('map')
  }
}
