import type { Aim, Bench, Hold } from '../bench'
import type { Point } from '../view/map-view'
import { svgElement } from '../view/svg-element'
import { sceneOf } from './scene'
import { selectionOfMembers } from './selection-of'

/** Draws a box from where the hand went down; the stations in it, and the lines that lie in it whole, are selected together. */
export function selectBox(bench: Bench, start: Aim): Hold {
  const { store, view } = bench
  const group = view.addGroup('select-box', 'signs-moving')
  let to: Point = start.point
  const box = () => ({
    x: Math.min(start.point.x, to.x),
    y: Math.min(start.point.y, to.y),
    width: Math.abs(to.x - start.point.x),
    height: Math.abs(to.y - start.point.y),
  })
  return {
    move: (aim) => {
      to = aim.point
      group.replaceChildren(svgElement('rect', { class: 'box', ...box() }))
    },
    drop: () => {
      group.remove()
      const { x, y, width, height } = box()
      const isIn = (point: Point) =>
        point.x >= x && point.x <= x + width && point.y >= y && point.y <= y + height
      const scene = sceneOf(store.settled.peek(), bench)
      const stations = scene.stations.filter(({ at }) => isIn(at)).map(({ id }) => id)
      const lines = scene.lines.filter(({ path }) => path.every(isIn)).map(({ id }) => id)
      store.selection.value = selectionOfMembers({ stations, lines })
      bench.say(`${stations.length} stations and ${lines.length} lines selected`)
    },
    letGo: () => group.remove(),
  }
}
