import type { VoiceRow } from '../budget/rows'
import type { Switchboard } from './switchboard'

/** A telephone on a board, and what its place there is called: `3`, on a shared line `3a`; the operator's own is `op`. */
export interface OnBoard {
  readonly station: string
  readonly label: string
}

/** Every telephone on a board, jack by jack; the operator's last. */
export function telephonesOn({ jacks, hasOperator, station }: Switchboard): readonly OnBoard[] {
  const onJacks = jacks.flatMap(({ number, stations }) =>
    stations.map((each, i) => ({
      station: each,
      label: stations.length > 1 ? `${number}${partyLetter(i)}` : String(number),
    })),
  )
  return hasOperator ? [...onJacks, { station, label: 'op' }] : onJacks
}

const partyLetter = (i: number): string =>
  (i >= 26 ? partyLetter(Math.floor(i / 26) - 1) : '') + String.fromCharCode(97 + (i % 26))

/** The calls through a board as a triangle. */
export interface Triangle {
  /** The telephones, that of the faintest call first. */
  readonly telephones: readonly OnBoard[]
  /** By row from the second telephone on, by column from the first: the worse way of that call; null on one jack. */
  readonly calls: readonly (readonly (VoiceRow | null)[])[]
}

const spareDb = ({ lossDb, maxDb }: VoiceRow): number => maxDb - lossDb

/**
 * Calls through a board, each pair of telephones once by its worse way; the telephones in the order of their faintest calls, so that what is
 * faint stands in the corner.
 */
export function throughCalls(board: Switchboard, voice: readonly VoiceRow[]): Triangle {
  const all = telephonesOn(board)
  const jackOf = new Map(all.map(({ station, label }) => [station, label.replace(/[a-z]+$/, '') || label]))
  const worse = new Map<string, VoiceRow>()
  for (const row of voice) {
    if (jackOf.get(row.from) === jackOf.get(row.to)) continue
    const key = keyOf(row.from, row.to)
    const before = worse.get(key)
    if (!before || spareDb(row) < spareDb(before)) worse.set(key, row)
  }
  const least = new Map<string, number>()
  for (const row of worse.values())
    for (const station of [row.from, row.to])
      least.set(station, Math.min(least.get(station) ?? Number.POSITIVE_INFINITY, spareDb(row)))
  const telephones = all
    .filter(({ station }) => least.has(station))
    .sort((a, b) => least.get(a.station)! - least.get(b.station)!)
  return {
    telephones,
    calls: telephones
      .slice(1)
      .map(({ station }, i) =>
        telephones.slice(0, i + 1).map((other) => worse.get(keyOf(station, other.station)) ?? null),
      ),
  }
}

const keyOf = (a: string, b: string): string => [a, b].sort().join('\n')
