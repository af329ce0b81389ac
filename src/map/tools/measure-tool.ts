import { computed, signal } from '@preact/signals'
import { legGeometry, pathM } from '../../geo/leg-length'
import type { Position } from '../../geo/position'
import { formatBearingDeg } from '../../words/units'
import type { Bench, MapTool } from '../bench'
import { showDraft } from '../layers/show-draft'

/** Measures from click to click: how far, which way by the map's true north, how much higher. It changes no plan. */
export function measureTool(bench: Bench): MapTool & { readonly remove: () => void } {
  const { store, view } = bench
  const corners = signal<readonly Position[]>([])
  const pointer = signal<Position | null>(null)
  const remove = showDraft(view, corners, pointer)

  const words = computed(() => {
    const path = pointer.value ? [...corners.value, pointer.value] : corners.value
    const [from, to] = path.slice(-2)
    if (!from || !to) return ''
    const { run, length } = store.tongue.value
    const { mapM, bearingDeg } = legGeometry(from, to)
    const ground = store.ground.value
    const [low, high] = [ground?.heightM(from[0], from[1]), ground?.heightM(to[0], to[1])]
    const climbM = low === undefined || high === undefined ? undefined : high - low
    return [
      run(mapM),
      formatBearingDeg(bearingDeg),
      climbM === undefined ? '' : `${length(Math.abs(climbM))} ${climbM < 0 ? 'lower' : 'higher'}`,
      path.length > 2 ? `${run(pathM(path))} in all` : '',
    ]
      .filter(Boolean)
      .join(' · ')
  })

  const clear = (): boolean => {
    const had = corners.peek().length > 0
    corners.value = []
    pointer.value = null
    return had
  }
  const back = (): boolean => {
    const had = corners.peek().length > 0
    corners.value = corners.peek().slice(0, -1)
    return had
  }

  return {
    hint: () => words.value || (corners.value.length ? 'Click the other end' : 'Click where to measure from'),
    underWay: () => corners.value.length > 0,
    steps: () =>
      corners.value.length
        ? [
            { words: 'Take back', act: back },
            { words: 'Clear', act: clear },
          ]
        : [],
    hover: (aim) => {
      if (corners.peek().length) pointer.value = aim.position
    },
    leave: () => {
      pointer.value = null
    },
    click: ({ position }) => {
      pointer.value = null
      corners.value = [...corners.peek(), position]
      if (words.peek()) bench.say(words.peek())
    },
    back,
    cancel: clear,
    forget: clear,
    remove,
  }
}
