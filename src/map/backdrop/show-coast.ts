import { signal } from '@preact/signals'
import * as L from 'leaflet'
import { unrolled } from '../../geo/longitude'
import type { Position } from '../../geo/position'
import { effect } from '../../state/steady-effect'
import type { MapView, Point } from '../view/map-view'
import { svgElement } from '../view/svg-element'

/** One island or continent: its rings and what they span, in px of the map at zoom 0. */
interface Shape {
  readonly rings: readonly (readonly L.Point[])[]
  readonly span: L.Bounds
}

/** The outline is good for 1 : 50 million: nearer than this it would put stations into the sea. */
const NEAREST_ZOOM = 13
/** Nearer than this it is only a hint of where the coast runs, so the sea is not filled. */
const NEAREST_FILLED_ZOOM = 10
/** Width of the whole world at zoom 0, px. */
const WORLD_PX = 256

/** How long the map must stay far before the outline is fetched, ms. */
const WAIT_MS = 700

const isTooNear = ({ map }: MapView): boolean => map.getZoom() > NEAREST_ZOOM

/** Draws land and sea at small scales, from data that come with the program (Natural Earth, 1 : 50 million). */
export function showCoast(view: MapView): () => void {
  const group = view.addGroup('coast', 'below')
  const sea = svgElement('rect', { class: 'sea' }, group)
  const land = svgElement('path', { class: 'land' }, group)
  const shapes = signal<readonly Shape[] | null>(null)
  let asked: ReturnType<typeof setTimeout> | undefined

  /** Later, since a plan that opens meanwhile most often shows ground too near for it. */
  const askSoon = () => {
    asked ??= setTimeout(async () => {
      try {
        if (!isTooNear(view)) shapes.value = await loadLand(view.map)
      } catch {
        // Without the outline the map works as well.
      }
      asked = undefined
    }, WAIT_MS)
  }

  const stop = effect(() => {
    view.frame.value
    const near = isTooNear(view)
    const loaded = shapes.value
    group.classList.toggle('hidden', near || !loaded)
    group.classList.toggle('rough', view.map.getZoom() > NEAREST_FILLED_ZOOM)
    if (near) return
    if (!loaded) {
      askSoon()
      return
    }
    const { min, max } = view.drawBox()
    const frame = { x: min.x, y: min.y, width: max.x - min.x, height: max.y - min.y }
    for (const [name, value] of Object.entries(frame)) sea.setAttribute(name, String(value))
    land.setAttribute('d', landPath(view, loaded))
  })
  return () => {
    clearTimeout(asked)
    stop()
    group.remove()
  }
}

async function loadLand(map: L.Map): Promise<readonly Shape[]> {
  const [{ default: topology }, { feature }] = await Promise.all([
    import('world-atlas/land-50m.json'),
    import('topojson-client'),
  ])
  return feature(topology, topology.objects.land).features.flatMap(({ geometry }) => {
    if (geometry.type !== 'MultiPolygon') return []
    return geometry.coordinates.map((polygon) => {
      const rings = polygon.map((ring) =>
        closedAtPole(unrolled(ring as unknown as readonly Position[], 0)).map(([lon, lat]) =>
          map.project([lat, lon], 0),
        ),
      )
      return { rings, span: L.bounds(rings.flat()) }
    })
  })
}

/** A ring that goes once round the earth holds a pole: here always the southern one. */
function closedAtPole(ring: readonly (readonly [number, number])[]): readonly (readonly [number, number])[] {
  const [first, last] = [ring[0]!, ring.at(-1)!]
  return Math.abs(last[0] - first[0]) < 180 ? ring : [...ring, [last[0], -90], [first[0], -90]]
}

/** The land within the drawing box, on every turn of the globe that the box shows. */
function landPath(view: MapView, shapes: readonly Shape[]): string {
  const scale = 2 ** view.map.getZoom()
  const origin = view.map.getPixelOrigin()
  const { min, max } = view.drawBox()
  const box = L.bounds([min.x, min.y], [max.x, max.y])
  const atZoom0 = ({ x, y }: Point) => L.point((x + origin.x) / scale, (y + origin.y) / scale)
  const seen = L.bounds([atZoom0(min), atZoom0(max)])
  const pieces: string[] = []
  // An island across the antimeridian sticks out of its own turn on either side.
  for (let turn = Math.floor(seen.min!.x / WORLD_PX) - 1; (turn - 1) * WORLD_PX < seen.max!.x; turn++) {
    const shiftPx = L.point(turn * WORLD_PX, 0)
    const seenHere = L.bounds([seen.min!.subtract(shiftPx), seen.max!.subtract(shiftPx)])
    for (const { rings, span } of shapes) {
      if (!span.intersects(seenHere)) continue
      for (const ring of rings) {
        const points = ring.map((point) => point.add(shiftPx).multiplyBy(scale).subtract(origin))
        const clipped = L.PolyUtil.clipPolygon(L.LineUtil.simplify(points, 0.5), box)
        if (clipped.length > 2)
          pieces.push(`M${clipped.map(({ x, y }) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}Z`)
      }
    }
  }
  return pieces.join('')
}
