import { computed, untracked } from '@preact/signals'
import { effect } from '../state/steady-effect'
import type { Tool } from '../state/store'
import type { Aim, Bench, MapTool } from './bench'
import { announce } from './frame/announce'
import { showAids } from './frame/show-aids'
import { showDeed } from './frame/show-deed'
import type { showFoot } from './frame/show-foot'
import { showHint } from './frame/show-hint'
import { showZoomButtons } from './frame/show-zoom-buttons'
import { showCrosshair } from './input/crosshair'
import { followPointers } from './input/gestures'
import { followKeys } from './input/keys'
import { showMenu } from './input/show-menu'
import { showCautions } from './layers/show-cautions'
import { pointAlong, showCursor } from './layers/show-cursor'
import { showDone } from './layers/show-done'
import { showFar } from './layers/show-far'
import { showFault } from './layers/show-fault'
import { showFaultShade } from './layers/show-fault-shade'
import { showLegLabels } from './layers/show-leg-labels'
import { showPlanned } from './layers/show-planned'
import { showRubberLabel } from './layers/show-rubber-label'
import { showSplices } from './layers/show-splices'
import { showSpots } from './layers/show-spots'
import { showSuggested } from './layers/show-suggested'
import { showTags } from './layers/show-tags'
import { hazardTool } from './tools/hazard-tool'
import { lineTool } from './tools/line-tool'
import { measureTool } from './tools/measure-tool'
import { keepPickedSelected } from './tools/pick'
import { pointingTool } from './tools/pointing-tool'
import { selectTool } from './tools/select-tool'
import { stationTool } from './tools/station-tool'
import { fitPlan } from './view/fit-plan'

/** Puts the tools to work on a map that is drawn: by pointer, finger and key. Returns how to stop. */
export function workOnMap(bench: Bench, foot: ReturnType<typeof showFoot>): () => void {
  const { store, view } = bench
  const lines = lineTool(bench)
  const hazards = hazardTool(bench)
  const measure = measureTool(bench)
  const tools: Readonly<Record<Tool, MapTool>> = {
    select: selectTool(bench),
    station: stationTool(bench),
    line: lines,
    hazard: hazards,
    measure,
  }
  const pointing = pointingTool(bench)
  const toolInUse = computed(() => (store.placeWanted.value ? pointing : tools[store.tool.value]))
  let before: MapTool | null = null
  const stopChanging = effect(() => {
    const now = toolInUse.value
    untracked(() => {
      // What is under way waits while a place is pointed out.
      if (before && before !== now && now !== pointing && before !== pointing) before.cancel?.()
    })
    before = now
    view.container.dataset.tool = store.tool.value
    view.container.dataset.over = ''
  })

  // A line that was begun on another plan is none on this one.
  const stopForgetting = effect(() => {
    store.opened.value
    untracked(() => {
      for (const each of Object.values(tools)) each.forget?.()
    })
  })

  const stopTakingUp = effect(() => {
    const what = store.takenUp.value
    // A walk that was cut off is no work of a tool: who follows the field takes it up.
    if (what?.kind !== 'line' && what?.kind !== 'hazard') return
    untracked(() => {
      store.takenUp.value = null
      store.tool.value = what.kind
      tools[what.kind].takeUp?.(what)
    })
  })

  const crosshair = showCrosshair(view)
  const menu = showMenu(bench)
  const tool = () => toolInUse.peek()
  const hint = showHint(bench, tool)
  const aimed = (aim: Aim | null) => {
    if (aim) crosshair.follow(aim)
    else tool().leave?.()
    foot.aimed(aim)
    pointAlong(bench, aim)
  }
  const pointers = followPointers(view, tool, { menu: menu.open, aimed })
  const stopKeys = followKeys(bench, tool, { crosshair, pointers, menu: menu.open, aimed: foot.aimed })
  // What the first sight of a plan does without, or shows only for what is selected, drawn or sought.
  const layers = [
    showFar(bench),
    showSuggested(bench),
    showPlanned(bench),
    showDone(bench),
    showCautions(bench),
    showTags(bench),
    showSplices(bench),
    showLegLabels(bench),
    showRubberLabel(bench),
    showCursor(bench),
    showFaultShade(bench),
    showFault(bench),
    showSpots(bench),
  ]
  // What only a plan of several needs comes with the first.
  let together: (() => void) | null = null
  let isOver = false
  const stopTogether = effect(() => {
    if (together || !(store.sharing.value || store.toChoose.value)) return
    together = () => {}
    void import('./layers/show-together').then(({ showTogether }) => {
      if (!isOver) together = showTogether(bench)
    })
  })
  const deed = showDeed(bench)
  const aids = showAids(bench)
  const announcer = announce(bench)
  const zoomButtons = showZoomButtons(view, () => fitPlan(view, store.plan.peek()))
  const stopPicking = keepPickedSelected(bench)

  return () => {
    isOver = true
    stopTogether()
    together?.()
    stopPicking()
    stopKeys()
    stopChanging()
    stopForgetting()
    stopTakingUp()
    for (const remove of layers) remove()
    lines.remove()
    hazards.remove()
    measure.remove()
    for (const part of [pointers, crosshair, menu, hint, deed, aids, announcer, zoomButtons]) part.remove()
  }
}
