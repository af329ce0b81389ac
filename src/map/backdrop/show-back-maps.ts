import * as L from 'leaflet'
import type { BackMap, MapsKeeper } from '../../state/maps-state'
import { effect } from '../../state/steady-effect'
import type { Bench } from '../bench'

/** Side of a tile on the screen, px; sharp screens are given up to twice as many dots. */
const TILE_PX = 256
const MOST_DOTS = 2

interface Laid {
  readonly layer: L.GridLayer
  /** What it is drawn from: another value means that it must be drawn anew. */
  readonly of: readonly unknown[]
}

/** Lays the maps that are at hand beneath the net, the first lowest. Returns how to take them away. */
export function showBackMaps({ store, view }: Bench): () => void {
  const laid = new Map<string, Laid>()
  const take = (key: string) => {
    laid.get(key)?.layer.remove()
    laid.delete(key)
  }
  const stop = effect(() => {
    const keeper = store.mapsKeeper.value
    const shown = store.maps.value.filter(({ isShown, facts }) => isShown && facts)
    for (const key of laid.keys()) if (!shown.some((each) => each.key === key)) take(key)
    if (!keeper) return
    for (const [order, map] of shown.entries()) {
      const of = [map.facts, map.fit]
      if (laid.get(map.key)?.of.some((each, i) => each !== of[i])) take(map.key)
      if (!laid.has(map.key))
        laid.set(map.key, { layer: layerOf(map, keeper, view.map.getMaxZoom()).addTo(view.map), of })
      const { layer } = laid.get(map.key)!
      layer.setOpacity(map.opacity)
      layer.setZIndex(order + 1)
    }
  })
  return () => {
    stop()
    for (const key of laid.keys()) take(key)
  }
}

function layerOf({ key, facts }: BackMap, keeper: MapsKeeper, maxZoom: number): L.GridLayer {
  const { westDeg, southDeg, eastDeg, northDeg } = facts!.extent
  const dots = Math.min(MOST_DOTS, Math.max(1, devicePixelRatio))
  const createTile = ({ x, y, z }: L.Coords, done: L.DoneCallback) => {
    const canvas = document.createElement('canvas')
    canvas.width = canvas.height = Math.round(TILE_PX * dots)
    const around = 2 ** z
    const place = { zoom: z, column: ((x % around) + around) % around, row: y }
    const isWanted = () => canvas.dataset.gone === undefined
    void keeper.tile(key, place, canvas.width, isWanted).then((picture) => {
      if (picture) canvas.getContext('bitmaprenderer')?.transferFromImageBitmap(picture)
      done(undefined, canvas)
    })
    return canvas
  }
  const Layer = L.GridLayer.extend({ createTile }) as new (options: L.GridLayerOptions) => L.GridLayer
  const layer = new Layer({
    ...{ tileSize: TILE_PX, className: 'back-map', maxZoom },
    minZoom: facts!.minZoom,
    bounds: L.latLngBounds([southDeg, westDeg], [northDeg, eastDeg]),
  })
  layer.on('tileunload', ({ tile }) => {
    tile.dataset.gone = ''
  })
  return layer
}
