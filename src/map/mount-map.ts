import { computed, signal } from '@preact/signals'
import { effect } from '../state/steady-effect'
import 'leaflet/dist/leaflet.css'
import './map.css'
import './backdrop/backdrop.css'
import './layers/layers.css'
import './frame/frame.css'
import { HAZARD_KINDS } from '../plan/plan'
import type { Store, Tool } from '../state/store'
import { showCoast } from './backdrop/show-coast'
import { showGrid } from './backdrop/show-grid'
import { showTerrain } from './backdrop/show-terrain'
import type { Aim, Bench, MapTool } from './bench'
import { showFoot } from './frame/show-foot'
import { showHint } from './frame/show-hint'
import { showSpeaker } from './frame/show-speaker'
import { showZoomButtons } from './frame/show-zoom-buttons'
import { showCrosshair } from './input/crosshair'
import { followPointers } from './input/gestures'
import { followKeys } from './input/keys'
import { showMenu } from './input/show-menu'
import { showCautions } from './layers/show-cautions'
import { pointAlong, showCursor } from './layers/show-cursor'
import { showFault } from './layers/show-fault'
import { showHazards } from './layers/show-hazards'
import { showLegLabels } from './layers/show-leg-labels'
import { showLines } from './layers/show-lines'
import { showNames } from './layers/show-names'
import { showRubberLabel } from './layers/show-rubber-label'
import { showSplices } from './layers/show-splices'
import { showStations } from './layers/show-stations'
import { showSuggested } from './layers/show-suggested'
import { showTags } from './layers/show-tags'
import { hazardTool } from './tools/hazard-tool'
import { lineTool } from './tools/line-tool'
import { keepPickedSelected } from './tools/pick'
import { selectTool } from './tools/select-tool'
import { stationTool } from './tools/station-tool'
import { fitOpenedPlans, fitPlan } from './view/fit-plan'
import { gatheredStations } from './view/gather-stations'
import { createMapView } from './view/map-view'
import { movingThings } from './view/moving'
import { showRequestedPlace } from './view/show-requested-place'

/** Puts the map into an element and keeps it in step with the store. Returns the undoing of itself. */
export function mountMap(element: HTMLElement, store: Store): () => void {
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
    showCoast(view),
    showTerrain(bench),
    showGrid(view),
    showHazards(bench),
    showLines(bench),
    showSuggested(bench),
    showTags(bench),
    showSplices(bench),
    showCautions(bench),
    showStations(bench),
    showNames(bench),
    showLegLabels(bench),
    showRubberLabel(bench),
    showCursor(bench),
    showRequestedPlace(view),
    showFault(bench),
  ]

  const hazards = hazardTool(bench)
  const tools: Readonly<Record<Tool, MapTool>> = {
    select: selectTool(bench),
    station: stationTool(bench),
    line: lineTool(bench),
    hazard: hazards,
  }
  const toolInUse = computed(() => tools[store.tool.value])
  let before: MapTool | null = null
  const stopChanging = effect(() => {
    const now = toolInUse.value
    if (before && before !== now) before.cancel?.()
    before = now
    container.dataset.tool = store.tool.value
    container.dataset.over = ''
  })

  const crosshair = showCrosshair(view)
  const foot = showFoot(bench)
  const menu = showMenu(bench)
  const tool = () => toolInUse.peek()
  const hint = showHint(bench, tool, () => crosshair.aim(false))
  const aimed = (aim: Aim | null) => {
    if (aim) crosshair.follow(aim)
    foot.aimed(aim)
    pointAlong(bench, aim)
  }
  const pointers = followPointers(view, tool, { menu: menu.open, aimed })
  const stopKeys = followKeys(bench, tool, { crosshair, pointers, menu: menu.open, aimed: foot.aimed })
  const zoomButtons = showZoomButtons(view, () => fitPlan(view, store.plan.peek()))
  const stopPicking = keepPickedSelected(bench)
  const stopFitting = fitOpenedPlans(view, store)

  return () => {
    stopFitting()
    stopPicking()
    stopKeys()
    stopChanging()
    hazards.remove()
    for (const part of [pointers, crosshair, foot, menu, hint, zoomButtons, speaker]) part.remove()
    for (const remove of layers) remove()
    view.remove()
    container.remove()
    element.classList.remove('map')
  }
}
