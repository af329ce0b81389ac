import { type Box, boxAround, type Point } from '../../figure/geometry'
import { LINE_STEP_MM, TAG_REACH } from '../../figure/line-signs'
import { textWidthEm } from '../../figure/text-width'
import type { Label } from './label-placer'

export type LabelStyle = 'station' | 'line' | 'mark' | 'match' | 'hazard' | 'far'

/** Letters of each kind of label, mm an em; sheet.css holds the same figures. */
const LETTER_MM: Readonly<Record<LabelStyle, number>> = {
  station: 3.5,
  line: 3.1,
  mark: 2.9,
  match: 2.9,
  hazard: 2.9,
  far: 3.1,
}
/** How far from its point a name may stand. */
export const REACH_MM = 30
const STATION_MM = [5.2, 3.6] as const
const SPLICE_MM = 3
const BEND_MM = 1.6
/** Tags so close on paper share a label. */
const BUNCH_MM = 2.5

/** The names that a map would like to bear, to be placed together. */
export function wantedLabels() {
  const wanted: { readonly style: LabelStyle; readonly label: Label }[] = []
  const want = (style: LabelStyle, text: string, at: Point, clearMm: number) =>
    wanted.push({
      style,
      label: {
        id: `${style} ${wanted.length}`,
        text,
        widthMm: textWidthEm(text, style === 'station') * LETTER_MM[style] + 0.8,
        heightMm: LETTER_MM[style] * 1.2,
        at,
        clearMm,
      },
    })
  return { wanted, want }
}

interface Signs {
  readonly stations: readonly { readonly at: Point }[]
  readonly splices: readonly { readonly at: Point }[]
  readonly tags: readonly { readonly at: Point }[]
  readonly bends: readonly Point[]
}

/** The room that signs take, which no name may cover. */
export const signBoxes = ({ stations, splices, tags, bends }: Signs): readonly Box[] => [
  ...stations.map(({ at }) => boxAround(at, ...STATION_MM)),
  ...splices.map(({ at }) => boxAround(at, SPLICE_MM, SPLICE_MM)),
  ...tags.map(({ at }) => tagBox(at)),
  ...bends.map((at) => boxAround(at, BEND_MM, BEND_MM)),
]

const tagBox = ([x, y]: Point): Box => ({
  left: x - TAG_REACH.aside * LINE_STEP_MM,
  right: x + TAG_REACH.aside * LINE_STEP_MM,
  top: y,
  bottom: y + TAG_REACH.down * LINE_STEP_MM,
})

/** Marks in order, those that lie close together under one name: `1/3–1/4`. */
export function bunched(marks: readonly { readonly name: string; readonly at: Point }[]) {
  const bunches: { first: string; name: string; at: Point }[] = []
  for (const { name, at } of marks) {
    const last = bunches.at(-1)
    if (last && Math.hypot(at[0] - last.at[0], at[1] - last.at[1]) < BUNCH_MM)
      last.name = `${last.first}–${name}`
    else bunches.push({ first: name, name, at })
  }
  return bunches
}
