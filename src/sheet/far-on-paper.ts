import { stationName } from '../plan/plan'
import type { FarShade } from '../report/far-shades'
import type { FarLimit } from '../report/further-set'
import type { Store } from '../state/store'
import { farLabel, farSentences } from '../words/far-words'
import { tongueOf } from '../words/tongue'

/** How far one telephone more could stand, as the screen shows it: nothing is reckoned anew for paper. */
export interface FarOnPaper {
  /** From where: the name of a station. */
  readonly from: string
  readonly shades: readonly (FarShade & { readonly label: string })[]
  readonly sentences: readonly string[]
}

/** By what stroke each outline is told, in words. */
const STROKE_WORDS: Readonly<Record<FarLimit, string>> = {
  today: 'dotted: today',
  worst: 'dashed: at worst',
  nine: 'heavy: nine in ten work at worst',
  stock: 'dash and dot: the wire runs out',
}

/** What is shown on the screen of it, for paper; null where nothing is, or more is still to come. */
export function farOnPaper(store: Store): FarOnPaper | null {
  const [far, asked] = [store.far.value, store.farAsked.value]
  if (!far?.found || far.isUnderWay || !asked || store.farDrawn.value) return null
  const { plan, found } = far
  const say = tongueOf(plan, store.units.value)
  const from = stationName(plan, asked.from)
  const set = say.name(asked.set)
  const wire = say.name(asked.wire)
  const strokes = found.shades.map(({ limit }) => STROKE_WORDS[limit]).join(' · ')
  return {
    from,
    shades: found.shades.map((shade) => ({
      ...shade,
      label: farLabel(shade.limit, found.limitsM[shade.limit]!, say),
    })),
    sentences: [
      `Where one more telephone could stand: ${set}, over ${wire}.`,
      ...farSentences(found, from, say),
      ...(strokes ? [`Outlines: ${strokes}.`] : []),
    ],
  }
}
