import type { LearnedFigures } from '../field/learned-figures'
import type { WireMember } from '../field/wire-figures'
import { figureName } from './figure-names'
import type { Tongue } from './tongue'
import { type Quantity, unitOf } from './units'

const QUANTITY: Readonly<Record<WireMember, Quantity>> = {
  loopOhmPerKm: 'ohmPerKm',
  nanoFPerKm: 'nanoFPerKm',
  wetNanoFPerKm: 'nanoFPerKm',
  dryMicroSPerKm: 'microSPerKm',
  wetMicroSPerKm: 'microSPerKm',
  wornMicroSPerKm: 'microSPerKm',
}

/** `The loop resistance: 131 Ω/km in the book, 138 ± 2 Ω/km as read.` of each figure that readings told something of. */
export const learnedSentences = (learned: LearnedFigures, { system }: Tongue): readonly string[] =>
  (Object.keys(QUANTITY) as WireMember[]).flatMap((member) => {
    const figure = learned[member]
    if (!figure) return []
    const { fromSi, sign } = unitOf(QUANTITY[member], system)
    const text = (si: number) => String(Number(fromSi(si).toPrecision(3)))
    const half = String(Number(fromSi((figure.high - figure.low) / 2).toPrecision(1)))
    const name = figureName(member)
    return [
      `${name.charAt(0).toUpperCase()}${name.slice(1)} at 20 °C: ${text(figure.book)} ${sign} in the book, ${text(figure.value)} ± ${half} ${sign} as read.`,
    ]
  })
