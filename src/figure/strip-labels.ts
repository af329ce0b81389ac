import { emOf, round, type StripLabel, type StripMark, type StripMarkKind, TIER_MM, widthOf } from './strip'
import { cutToWidth } from './text-width'

/** The order in which marks are named as long as there is room. */
const RANK: Readonly<Record<StripMarkKind, number>> = {
  station: 0,
  caution: 1,
  crossing: 1,
  splice: 2,
  tag: 3,
  bend: 4,
}

interface Taken {
  readonly from: number
  readonly to: number
  readonly tier: number
}

/** Names over the strip: tags close to it, all else in the tiers above, each only where it covers no other and its stroke crosses none. */
export function labelsOf(
  marks: readonly StripMark[],
  xOf: (groundM: number) => number,
  bounds: { readonly left: number; readonly right: number },
  { tagY, wireY, tiers }: { readonly tagY: number; readonly wireY: number; readonly tiers: number },
): readonly StripLabel[] {
  const taken: Taken[] = []
  const leaders: { readonly x: number; readonly tier: number }[] = []
  const labels: StripLabel[] = []
  const isFree = (from: number, to: number, tier: number) =>
    from >= bounds.left &&
    to <= bounds.right &&
    taken.every((other) => other.tier !== tier || other.to < from || other.from > to) &&
    leaders.every(({ x, tier: high }) => high <= tier || x < from || x > to)
  const isClearBelow = (x: number, tier: number, own: number | undefined) =>
    taken.every(
      (other) => other.tier >= tier || other.tier === own || x < other.from - 0.4 || x > other.to + 0.4,
    )

  for (const { kind, groundM, name } of marks.toSorted((a, b) => RANK[a.kind] - RANK[b.kind])) {
    if (!name) continue
    const x = xOf(groundM)
    const isBold = kind === 'station' || kind === 'tag'
    const text = cutToWidth(name, emOf(kind === 'station' ? 60 : 46), isBold)
    const width = widthOf(text, isBold)
    if (kind === 'tag') {
      const from = Math.min(Math.max(x - width / 2, bounds.left), bounds.right - width)
      if (!isFree(from - 0.5, from + width + 0.5, 0)) continue
      taken.push({ from, to: from + width, tier: 0 })
      labels.push({ text, x: round(from + width / 2), y: tagY - 0.6, anchor: 'middle', isBold })
      continue
    }
    for (let tier = 1; tier <= tiers; tier++) {
      const shifts = [0, width / 2 - 1, 1 - width / 2]
      const from = shifts
        .map((shift) => x - width / 2 + shift)
        .find((start) => isFree(start - 0.7, start + width + 0.7, tier))
      if (from === undefined || !isClearBelow(x, tier, undefined)) continue
      taken.push({ from, to: from + width, tier })
      leaders.push({ x, tier })
      const y = TIER_MM - 0.6 + (tiers - tier) * TIER_MM
      labels.push({
        text,
        x: round(from + width / 2),
        y,
        anchor: 'middle',
        isBold,
        leader: [x, round(y + 0.7), round(wireY - 1.6)],
      })
      break
    }
  }
  return labels
}
