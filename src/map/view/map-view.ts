import { type ReadonlySignal, signal } from '@preact/signals'
import * as L from 'leaflet'
import { WGS84_A_M } from '../../geo/earth'
import { nearLonDeg, unrolled, wrapLonDeg } from '../../geo/longitude'
import type { Position } from '../../geo/position'
import { degToRad } from '../../units'
import { svgElement } from './svg-element'

/** A point of the map's drawing, px; it stays under its place while the map is panned. */
export interface Point {
  readonly x: number
  readonly y: number
}

/** The rectangle in which things are worth drawing: the screen and as much again around it, px. */
export interface DrawBox {
  readonly min: Point
  readonly max: Point
}

/** The map as the layers see it: where places lie on the screen, and groups to draw in. */
export interface MapView {
  readonly map: L.Map
  readonly container: HTMLElement
  /** A new value whenever everything must be projected anew. */
  readonly frame: ReadonlySignal<number>
  pointOf(position: Position): Point
  pathOf(path: readonly Position[]): readonly Point[]
  /** Where a place lies whose longitude may have counted on past 180°. */
  pointOfUnrolled(lonDeg: number, latDeg: number): Point
  positionOf(point: Point): readonly [lonDeg: number, latDeg: number]
  drawBox(): DrawBox
  /** What is on the screen when the map rests, px. */
  readonly screen: ReadonlySignal<DrawBox>
  metresPerPx(): number
  /** A new group above those added before it on its level, or under the first of a name there. */
  addGroup(name: string, level?: Level, under?: string): SVGGElement
  remove(): void
}

/**
 * From the ground up: under the online tiles; ground and wire; the wire in hand; stations, names and marks; and of those what is in hand.
 * Each is a drawing of its own, so that a drag changes none of what stands. What is in hand has layers of the compositor to itself
 * (map.css); what stands has none, or Chromium 156 gathers its thousands anew at every frame, 18 ms of 1,000 stations against 2.
 */
const LEVELS = { below: 100, wire: 400, 'wire-moving': 401, signs: 402, 'signs-moving': 403 } as const
export type Level = keyof typeof LEVELS

/** One degree of longitude at the equator on the WGS 84 ellipsoid, m: π a / 180. */
const M_PER_EQUATOR_DEG = degToRad(WGS84_A_M)

/** Where Web Mercator ends: the world is a square up to here. */
const MOST_LAT_DEG = 85.0511287798

/** How much of the screen's size is drawn beyond each of its edges. */
const MARGIN = 0.5

export function createMapView(container: HTMLElement): MapView {
  const map = L.map(container, {
    attributionControl: false,
    zoomControl: false,
    zoomAnimation: false,
    fadeAnimation: false,
    inertia: false,
    keyboard: false,
    doubleClickZoom: false,
    boxZoom: false,
    zoomSnap: 0.25,
    wheelPxPerZoomLevel: 100,
    minZoom: 2,
    maxZoom: 22,
    center: [20, 0],
    zoom: 2,
  })
  const frame = signal(0)
  const screen = signal(screenBox(map))
  let refLonDeg = map.getCenter().lng
  let box = boxAround(map)
  let metresPerPx = metresPerPxOf(map)

  const redraw = () => {
    refLonDeg = map.getCenter().lng
    box = boxAround(map)
    metresPerPx = metresPerPxOf(map)
    frame.value++
  }
  const redrawIfOutside = () => {
    const { min, max } = screenBox(map)
    const inside = min.x >= box.min.x && min.y >= box.min.y && max.x <= box.max.x && max.y <= box.max.y
    if (!inside) redraw()
  }
  map.on('zoom viewreset resize', redraw)
  map.on('move', redrawIfOutside)
  map.on('moveend zoomend resize', () => {
    metresPerPx = metresPerPxOf(map)
    screen.value = screenBox(map)
  })
  const sizes = new ResizeObserver(() => map.invalidateSize({ pan: false }))
  sizes.observe(container)

  const pane = (name: string, zIndex: number) => {
    const element = map.createPane(name)
    element.style.zIndex = String(zIndex)
    return svgElement('svg', { class: 'map-drawing', width: 1, height: 1, 'aria-hidden': 'true' }, element)
  }
  const drawings = new Map(Object.entries(LEVELS).map(([level, zIndex]) => [level, pane(level, zIndex)]))

  /** Web Mercator, as Leaflet has it: written out, since a large net asks for it twenty thousand times. */
  const project = (lonDeg: number, latDeg: number): Point => {
    const worldPx = 256 * 2 ** map.getZoom()
    const origin = map.getPixelOrigin()
    const sine = Math.sin(degToRad(Math.min(MOST_LAT_DEG, Math.max(-MOST_LAT_DEG, latDeg))))
    return {
      x: (lonDeg / 360 + 0.5) * worldPx - origin.x,
      y: (0.5 - Math.log((1 + sine) / (1 - sine)) / (4 * Math.PI)) * worldPx - origin.y,
    }
  }

  return {
    map,
    container,
    frame,
    pointOf: ([lonDeg, latDeg]) => project(nearLonDeg(lonDeg, refLonDeg), latDeg),
    pathOf: (path) => unrolled(path, refLonDeg).map(([lonDeg, latDeg]) => project(lonDeg, latDeg)),
    pointOfUnrolled: project,
    positionOf: ({ x, y }) => {
      const { lat, lng } = map.unproject(map.getPixelOrigin().add([x, y]), map.getZoom())
      return [wrapLonDeg(lng), lat]
    },
    drawBox: () => box,
    screen,
    metresPerPx: () => metresPerPx,
    addGroup: (name, level = 'wire', under = '') => {
      const drawing = drawings.get(level)!
      const group = svgElement('g', { class: name })
      drawing.insertBefore(
        group,
        [...drawing.children].find((each) => each.getAttribute('class') === under) ?? null,
      )
      return group
    },
    remove: () => {
      sizes.disconnect()
      map.remove()
    },
  }
}

function metresPerPxOf(map: L.Map): number {
  const { lat } = map.getCenter()
  return (M_PER_EQUATOR_DEG * 360 * Math.cos(degToRad(lat))) / (256 * 2 ** map.getZoom())
}

function screenBox(map: L.Map): DrawBox {
  const size = map.getSize()
  return { min: map.containerPointToLayerPoint([0, 0]), max: map.containerPointToLayerPoint(size) }
}

function boxAround(map: L.Map): DrawBox {
  const { min, max } = screenBox(map)
  const dx = (max.x - min.x) * MARGIN
  const dy = (max.y - min.y) * MARGIN
  return { min: { x: min.x - dx, y: min.y - dy }, max: { x: max.x + dx, y: max.y + dy } }
}
