import { DONE_SIGNS, type DoneSign, LAY_SIGNS, SIGN_WORDS, type Sign } from '../../figure/legend'
import { HAZARDS } from '../../hazard/kinds'
import { HAZARD_KINDS } from '../../plan/hazard-schema'
import type { HazardKind, Lay } from '../../plan/plan'
import type { FarLimit } from '../../report/further-set'
import { FAR_LIMITS, FAR_WORDS } from '../../words/far-words'
import { legStrokes } from '../layers/leg-strokes'
import { bendRing } from '../layers/line-strokes'
import { cautionSigns } from '../layers/show-cautions'
import { doneStrokes } from '../layers/show-done'
import { splicePlate } from '../layers/show-splices'
import { tagPlate } from '../layers/show-tags'
import { type Marks, stationSign } from '../layers/station-signs'
import { svgElement } from '../view/svg-element'

const WIDTH_PX = 56
const HEIGHT_PX = 30
const MIDDLE = { x: WIDTH_PX / 2, y: HEIGHT_PX / 2 }
const ENDS = [
  { x: 3, y: MIDDLE.y },
  { x: WIDTH_PX - 3, y: MIDDLE.y },
] as const
const ALL = { min: { x: 0, y: 0 }, max: { x: WIDTH_PX, y: HEIGHT_PX } }

/** Every sign as the map draws it, with what it stands for: a sheet that opens over the map. */
export function legendSheet(): HTMLElement {
  const sheet = document.createElement('section')
  sheet.className = 'legend'
  sheet.popover = 'auto'
  sheet.setAttribute('aria-label', 'Legend')
  // What scrolls must be reached by keys.
  sheet.tabIndex = 0
  const heading = document.createElement('h2')
  heading.textContent = 'Legend'
  const rows = document.createElement('ul')
  rows.append(
    ...(Object.keys(SIGN_WORDS) as Sign[]).map((sign) => row(SIGN_WORDS[sign].full, ...SIGNS[sign]())),
    ...LAY_SIGNS.map(([lay, words]) => row(`wire: ${words}`, ...wire(lay))),
    ...DONE_SIGNS.map(([sign, words]) => row(`wire: ${words}`, ...done(sign))),
    row('wire: trunk between two boards', ...trunk()),
    row('where a fault may be: the broader, the likelier; bars: 19 times of 20', ...fault()),
    ...HAZARD_KINDS.map((kind) => row(HAZARDS[kind].word, hazard(kind))),
    ...FAR_LIMITS.map((limit) => row(`how far: ${FAR_WORDS[limit]}`, farShade(limit))),
  )
  sheet.append(heading, rows)
  return sheet
}

function station(marks: Partial<Marks>): readonly SVGElement[] {
  const group = svgElement('g', { class: 'station' })
  group.append(
    ...stationSign(MIDDLE, {
      sign: 'telephone',
      isFailing: false,
      isSelected: false,
      isJoint: false,
      ...marks,
    }),
  )
  return [group]
}

const SIGNS: Readonly<Record<Sign, () => readonly SVGElement[]>> = {
  station: () => station({ sign: 'telephone' }),
  supply: () => station({ sign: 'supply' }),
  board: () => station({ sign: 'board' }),
  exchange: () => station({ sign: 'exchange' }),
  joint: () => station({ isJoint: true }),
  bend: () => [...wire('surface'), bendRing(MIDDLE)],
  splice: () => [...wire('surface'), splicePlate(MIDDLE)],
  tag: () => [tagPlate({ x: MIDDLE.x - 12, y: 4 }, false), tagPlate({ x: MIDDLE.x + 12, y: 4 }, true)],
  caution: () => cautionSigns([{ x: MIDDLE.x, y: MIDDLE.y + 2 }]),
}

function wire(lay: Lay): readonly SVGElement[] {
  const strokes = legStrokes(...ENDS, lay, ALL)
  return [
    svgElement('path', { class: `wire wire-${lay}`, d: strokes.wire }),
    ...(strokes.ticks ? [svgElement('path', { class: 'wire-ticks', d: strokes.ticks })] : []),
  ]
}

function done(sign: DoneSign): readonly SVGElement[] {
  const halo = svgElement('path', { class: 'wire-halo', d: `M${ENDS[0].x} ${ENDS[0].y}H${ENDS[1].x}` })
  return [...doneStrokes(sign, ENDS, 'under'), halo, ...wire('surface'), ...doneStrokes(sign, ENDS, 'over')]
}

function trunk(): readonly SVGElement[] {
  const [along] = wire('surface')
  return along ? [along, svgElement('path', { class: 'trunk-core', d: along.getAttribute('d') ?? '' })] : []
}

function farShade(limit: FarLimit): SVGElement {
  const d = `M3 ${HEIGHT_PX - 3}V${MIDDLE.y - 6}H${WIDTH_PX - 3}V${HEIGHT_PX - 3}`
  return svgElement('path', { class: `far-shade far-${limit}`, d })
}

function fault(): readonly SVGElement[] {
  const stroke = (className: string, d: string) => svgElement('path', { class: className, d })
  const tone = (n: number, from: number, to: number) =>
    stroke(`fault-tone tone-${n}`, `M${from} ${MIDDLE.y}H${to}`)
  const bar = (x: number) => stroke('fault-bar', `M${x} 2V${HEIGHT_PX - 2}`)
  return [tone(3, 3, 53), tone(2, 14, 42), tone(1, 22, 34), ...wire('surface'), bar(12), bar(44)]
}

function hazard(kind: HazardKind): SVGElement {
  const { stroke, fill, endsAsArea } = HAZARDS[kind]
  const group = svgElement('g', { class: `hazard stroke-${stroke} fill-${fill}${endsAsArea ? ' area' : ''}` })
  const d = endsAsArea ? `M4 4H${WIDTH_PX - 4}V${HEIGHT_PX - 4}H4Z` : `M3 ${MIDDLE.y}H${WIDTH_PX - 3}`
  svgElement('path', { class: 'hazard-bed', d }, group)
  svgElement('path', { class: 'hazard-top', d }, group)
  return group
}

function row(words: string, ...drawn: readonly SVGElement[]): HTMLElement {
  const item = document.createElement('li')
  const picture = svgElement('svg', {
    viewBox: `0 0 ${WIDTH_PX} ${HEIGHT_PX}`,
    width: WIDTH_PX,
    height: HEIGHT_PX,
    'aria-hidden': 'true',
  })
  picture.append(...drawn)
  item.append(picture, words)
  return item
}
