import type { Bench, MapTool } from '../bench'

/** In hand while somebody waits for a place: the next press on the map tells it, and changes nothing else. */
export const pointingTool = ({ store }: Bench): MapTool => ({
  hint: () => 'Press the place that is meant',
  click: ({ position }) => store.placeWanted.peek()?.(position),
  cancel: () => {
    if (!store.placeWanted.peek()) return false
    store.placeWanted.value = null
    return true
  },
})
