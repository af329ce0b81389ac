import { computed, effect, signal } from '@preact/signals'
import 'leaflet/dist/leaflet.css'
import type { Store, Tool } from '../state/store'
import type { Aim, Bench, HandTool } from './bench'
import { showCrosshair } from './crosshair'
import { fitOpenedPlans, fitPlan } from './fit-plan'
import { followPointers } from './gestures'
import { hazardTool } from './hazard-tool'
import { followKeys } from './keys'
import { lineTool } from './line-tool'
import './map.css'
import { createMapView } from './map-view'
import { selectTool } from './select-tool'
import { showCoast } from './show-coast'
import { showFoot } from './show-foot'
import { showGrid } from './show-grid'
import { showHazards } from './show-hazards'
import { showHint } from './show-hint'
import { showLegLabels } from './show-leg-labels'
import { showLines } from './show-lines'
import { showMenu } from './show-menu'
import { showNames } from './show-names'
import { showRubberLabel } from './show-rubber-label'
import { showSpeaker } from './show-speaker'
import { showSplices } from './show-splices'
import { showStations } from './show-stations'
import { showTerrain } from './show-terrain'
import { showZoomButtons } from './show-zoom-buttons'
import { stationTool } from './station-tool'

/** Puts the map into an element and keeps it in step with the store. Returns the undoing of itself. */
export function mountMap(element: HTMLElement, store: Store): () => void {
  const container = document.createElement('div')
  container.className = 'map-canvas'
  element.classList.add('map')
  element.append(container)
  const view = createMapView(container)
  const speaker = showSpeaker(view, store)
  const bench: Bench = {
    store,
    view,
    picked: signal(null),
    ghost: signal(null),
    lay: signal('surface'),
    hazardKind: signal('road'),
    say: speaker.say,
  }

  const layers = [
    showCoast(view),
    showTerrain(bench),
    showGrid(view),
    showHazards(bench),
    showLines(bench),
    showSplices(bench),
    showStations(bench),
    showNames(bench),
    showLegLabels(bench),
    showRubberLabel(bench),
  ]

  const hazards = hazardTool(bench)
  const tools: Readonly<Record<Tool, HandTool>> = {
    select: selectTool(bench),
    station: stationTool(bench),
    line: lineTool(bench),
    hazard: hazards,
  }
  const inHand = computed(() => tools[store.tool.value])
  let before: HandTool | null = null
  const stopChanging = effect(() => {
    const now = inHand.value
    if (before && before !== now) before.cancel?.()
    before = now
    container.dataset.tool = store.tool.value
    container.dataset.over = ''
  })

  const crosshair = showCrosshair(view)
  const foot = showFoot(bench)
  const menu = showMenu(bench)
  const tool = () => inHand.peek()
  const hint = showHint(bench, tool, () => crosshair.aim(false))
  const aimed = (aim: Aim | null) => {
    if (aim) crosshair.follow(aim)
    foot.aimed(aim)
  }
  const stopPointers = followPointers(view, tool, { menu: menu.open, aimed })
  const stopKeys = followKeys(bench, tool, crosshair, menu.open)
  container.addEventListener('pointerup', hint.refresh)
  container.addEventListener('keyup', hint.refresh)
  const zoomButtons = showZoomButtons(view, () => fitPlan(view, store.plan.peek()))
  const stopFitting = fitOpenedPlans(view, store)

  return () => {
    stopFitting()
    stopPointers()
    stopKeys()
    stopChanging()
    hazards.remove()
    for (const part of [crosshair, foot, menu, hint, zoomButtons, speaker]) part.remove()
    for (const remove of layers) remove()
    view.remove()
    container.remove()
    element.classList.remove('map')
  }
}
