import type { ReadonlySignal } from '@preact/signals'
import { createContext } from 'preact'
import { useContext } from 'preact/hooks'
import { type Picture, pictureOf } from '../figure/code-picture'
import type { Point } from '../figure/geometry'

/** What a picture of the plan says, until it can carry the plan itself. */
export interface PictureWords {
  readonly title: string
  readonly revision: string
  readonly fingerprint: string
}

/** A symbol of version 5 has 37 modules a side: with its white edge they are 0.36 mm wide on 16.5 mm, which a hand can hold a camera to. */
const MOST_VERSION = 5
/** Bytes that such a symbol holds at the lowest level of error correction: ISO/IEC 18004, table 7. */
const MOST_BYTES = 106

const bytesOf = (text: string) => new TextEncoder().encode(text).length

/** The text that the picture carries: one line each. A title that has no room ends in dots. */
export function pictureText({ title, revision, fingerprint }: PictureWords): string {
  const rest = [...(revision ? [`revision ${revision}`] : []), `plan ${fingerprint}`]
  const whole = ['Fieldpair', title, ...rest].join('\n')
  if (bytesOf(whole) <= MOST_BYTES) return whole
  const letters = [...title]
  const cut = () => ['Fieldpair', `${letters.join('')}…`, ...rest].join('\n')
  while (letters.length > 0 && bytesOf(cut()) > MOST_BYTES) letters.pop()
  return cut()
}

/** The picture that every sheet of a plan bears. */
export const planPicture = (words: PictureWords): Picture => pictureOf(pictureText(words), MOST_VERSION)

/** What all papers of one plan share: as signals, so that a letter of the revision draws it anew and no sheet. */
export const OfPlan = createContext<{
  readonly picture: ReadonlySignal<Picture>
  readonly revision: ReadonlySignal<string>
} | null>(null)

/** The picture at its place in a drawing that counts in mm. */
export function PlanPicture({ at, sizeMm }: { at: Point; sizeMm: number }) {
  const picture = useContext(OfPlan)?.picture.value
  return picture ? <CodeAt at={at} sizeMm={sizeMm} picture={picture} /> : null
}

/** Any code at its place in such a drawing. */
export const CodeAt = ({ at: [x, y], sizeMm, picture }: { at: Point; sizeMm: number; picture: Picture }) => (
  <g class="picture" transform={`translate(${x} ${y}) scale(${sizeMm / picture.side})`}>
    <path d={picture.path} style={{ fill: '#000', stroke: 'none' }} shape-rendering="crispEdges" />
  </g>
)
