import { signal } from '@preact/signals'
import { effect } from '../../state/steady-effect'
import type { ContourLine } from '../../terrain/contours'
import type { Extent } from '../../terrain/elevation-grid'
import type { Ground } from '../../terrain/ground'
import type { ReliefRequest } from '../../terrain/relief'
import { formatLengthM, type UnitSystem, unitOf } from '../../words/units'
import type { Bench } from '../bench'
import type { MapView } from '../view/map-view'
import { pathData } from '../view/path-data'
import { svgElement } from '../view/svg-element'
import { shadePicture } from './shade-picture'

/** What was made of the ground for one stretch of the map. */
interface DrawnRelief {
  readonly units: UnitSystem
  readonly ground: Ground
  readonly zoom: number
  readonly extent: Extent
  readonly contours: readonly ContourLine[]
  /** Address of the shade's picture; empty where there is none. */
  readonly shade: string
}

/** Px on the screen between heights: closer is slower and no finer to the eye. */
const LATTICE_PX = 7
/** The ground is worked out when the hand has rested so long, ms. */
const REST_MS = 120
/** Farther out relief is only a smudge. */
const FARTHEST_ZOOM = 8
/** Contours drawn for another zoom serve for so many levels more or less. */
const SERVES_LEVELS = 0.6

/** Draws contours and hill shading where elevations are known. */
export function showTerrain({ store, view }: Bench): () => void {
  const shadeGroup = view.addGroup('shade', 'wire', 'grid')
  const picture = svgElement('image', { preserveAspectRatio: 'none' }, shadeGroup)
  const group = view.addGroup('contours', 'wire', 'grid')
  const relief = signal<DrawnRelief | null>(null)
  let timer: ReturnType<typeof setTimeout> | undefined
  /** Once: the next move of the map would tell it again. */
  let told = ''
  const tell = (failure: string) => {
    if (failure !== told) store.notice.value = failure
    told = failure
  }

  const stop = effect(() => {
    view.frame.value
    const ground = store.ground.value
    const groundWorker = store.groundWorker.value
    const made = relief.value
    const far = view.map.getZoom() < FARTHEST_ZOOM
    const units = store.units.value
    const usable = made !== null && made.ground === ground && made.units === units && !far
    shadeGroup.classList.toggle('hidden', !usable || !made.shade || store.shade.value === 'off')
    group.classList.toggle('hidden', !usable || store.contours.value === 'off')
    if (usable) draw(view, made, picture, group)
    clearTimeout(timer)
    if (!ground || !groundWorker || far || (usable && serves(view, made))) return
    timer = setTimeout(async () => {
      const zoom = view.map.getZoom()
      const request = requestFor(view, units)
      const result = await groundWorker.drawRelief(request)
      if (result && !result.ok) tell(result.problems[0]!.message)
      const drawn = result?.ok ? result.value : null
      if (!drawn || store.ground.peek() !== ground || store.units.peek() !== units) return
      const { extent, columns, rows } = request
      const shade = shadePicture(drawn.shade, columns, rows)
      relief.value = { units, ground, zoom, extent, contours: drawn.contours, shade }
    }, REST_MS)
  })
  return () => {
    clearTimeout(timer)
    stop()
    shadeGroup.remove()
    group.remove()
  }
}

/** The stretch of the globe in the drawing box. */
function extentInView({ map, drawBox }: MapView): Extent {
  const { min, max } = drawBox()
  const northWest = map.layerPointToLatLng([min.x, min.y])
  const southEast = map.layerPointToLatLng([max.x, max.y])
  return { westDeg: northWest.lng, northDeg: northWest.lat, eastDeg: southEast.lng, southDeg: southEast.lat }
}

function serves(view: MapView, { extent, zoom }: DrawnRelief): boolean {
  const bounds = view.map.getBounds()
  return (
    Math.abs(view.map.getZoom() - zoom) <= SERVES_LEVELS &&
    bounds.getWest() >= extent.westDeg &&
    bounds.getEast() <= extent.eastDeg &&
    bounds.getSouth() >= extent.southDeg &&
    bounds.getNorth() <= extent.northDeg
  )
}

/** What the ground is asked for: heights over all that is drawn, and as many as the eye can tell apart. */
function requestFor(view: MapView, units: UnitSystem): ReliefRequest {
  const { min, max } = view.drawBox()
  const columns = Math.ceil((max.x - min.x) / LATTICE_PX)
  const rows = Math.ceil((max.y - min.y) / LATTICE_PX)
  return { extent: extentInView(view), columns, rows, unitM: unitOf('lengthM', units).toSi(1) }
}

function draw(
  view: MapView,
  { units, extent, contours, shade }: DrawnRelief,
  picture: SVGImageElement,
  group: SVGGElement,
): void {
  const from = view.pointOfUnrolled(extent.westDeg, extent.northDeg)
  const to = view.pointOfUnrolled(extent.eastDeg, extent.southDeg)
  const place = { x: from.x, y: from.y, width: to.x - from.x, height: to.y - from.y, href: shade }
  for (const [name, value] of Object.entries(place)) picture.setAttribute(name, String(value))
  const paths = { plain: '', index: '' }
  const labels: SVGElement[] = []
  for (const { heightM, isIndex, positions, label } of contours) {
    paths[isIndex ? 'index' : 'plain'] += pathData(
      positions.map(([lon, lat]) => view.pointOfUnrolled(lon, lat)),
    )
    if (!label) continue
    const { x, y } = view.pointOfUnrolled(...label.at)
    const text = svgElement('text', {
      class: 'contour-height',
      'text-anchor': 'middle',
      transform: `translate(${x.toFixed(1)} ${y.toFixed(1)}) rotate(${label.turnDeg.toFixed(0)}) translate(0 4)`,
    })
    text.textContent = formatLengthM(heightM, units)
    labels.push(text)
  }
  group.replaceChildren(
    svgElement('path', { class: 'contour', d: paths.plain }),
    svgElement('path', { class: 'contour contour-index', d: paths.index }),
    ...labels,
  )
}
