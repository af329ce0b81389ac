import { seeded, seededNormal } from '../../src/budget/seeded'
import type { simulator } from '../simulator/volts-at'

/**
 * Random nets with one fault planted, read through a circuit simulator that knows nothing of the program: a line is a ladder of
 * resistors, leaks and capacitors, and the instrument is a current source. What real things do is drawn from the spreads declared.
 */

export interface PlantedLine {
  readonly id: string
  readonly from: string
  readonly to: string
  readonly wireM: number
}

export type PlantedKind = 'short' | 'open' | 'leak' | 'resistance'

export interface Planted {
  readonly lines: readonly PlantedLine[]
  readonly weather: 'dry' | 'wet'
  readonly tempC: number
  readonly kind: PlantedKind
  readonly line: string
  readonly wireM: number
  readonly ohms: number
  /** Figures of the wire that really lies there, per km at 20 °C. */
  readonly real: { readonly ohm: number; readonly nanoF: number; readonly microS: number }
  readonly meterPct: number
  /** A meter's own error for one more reading, as a factor. */
  readonly error: () => number
}

const KINDS: readonly PlantedKind[] = ['short', 'open', 'leak', 'resistance']

/** What the plan declares of the wire. */
export const BOOK = {
  ...{
    id: 'w',
    name: 'Wire',
    loopOhmPerKm: 131,
    tempCoeffPerC: 0.0039,
    nanoFPerKm: 60,
    loopMilliHPerKm: 0.6,
  },
  ...{ dryMicroSPerKm: 0.5, wetMicroSPerKm: 20, kgPerKm: 13, source: 'invented' },
  spread: { loopOhmPerKm: 8, nanoFPerKm: 15, dryMicroSPerKm: 100, wetMicroSPerKm: 100 },
}

/** Two to five lines, of 0.5 to 5 km: a row with branches. */
export function planted(seed: number): Planted {
  const random = seeded(seed)
  const normal = seededNormal(seed + 1e6)
  const between = (low: number, high: number) => low + random() * (high - low)
  const lot = (pct: number) => (1 + pct / 100) ** (normal() / 1.96)
  const count = 2 + Math.floor(random() * 4)
  const lines = Array.from({ length: count }, (_, k) => ({
    id: `l${k}`,
    // Mostly in a row; now and then a branch from an earlier station.
    from: `s${random() < 0.7 ? k : Math.floor(random() * (k + 1))}`,
    to: `s${k + 1}`,
    wireM: Math.round(between(500, 5000)),
  }))
  const weather = random() < 0.5 ? 'dry' : 'wet'
  const totalM = lines.reduce((sum, { wireM }) => sum + wireM, 0)
  let at = random() * totalM
  const line = lines.find(({ wireM }) => {
    if (at < wireM) return true
    at -= wireM
    return false
  })!
  const kind = KINDS[seed % 4]!
  const logarithmic = (low: number, high: number) => low * (high / low) ** random()
  const ohms =
    kind === 'short'
      ? Math.min(30, Math.exp(1.2 * normal()))
      : kind === 'leak'
        ? logarithmic(100, 5000)
        : kind === 'resistance'
          ? logarithmic(20, 2000)
          : 0
  const { loopOhmPerKm, nanoFPerKm, dryMicroSPerKm, wetMicroSPerKm, spread } = BOOK
  const meterPct = 1
  return {
    lines,
    weather,
    tempC: Math.round(between(-5, 35)),
    kind,
    line: line.id,
    wireM: at,
    ohms,
    real: {
      ohm: loopOhmPerKm * lot(spread.loopOhmPerKm),
      nanoF: nanoFPerKm * lot(spread.nanoFPerKm),
      microS:
        weather === 'dry'
          ? dryMicroSPerKm * lot(spread.dryMicroSPerKm)
          : wetMicroSPerKm * lot(spread.wetMicroSPerKm),
    },
    meterPct,
    error: () => lot(meterPct),
  }
}

/** Sections of a ladder for each kilometre: at 0 Hz a line of so little leakage is long before that as good as even. */
const SECTIONS_PER_KM = 12

/** Where an instrument stands: at a station, or on a line. */
export type Stand = { readonly at: string } | { readonly line: string; readonly wireM: number }

export interface Look {
  readonly stand: Stand
  /** A station, or an end of the line that the instrument stands on. */
  readonly toward: string
  readonly far: 'open' | 'short'
  readonly what: 'loopOhms' | 'nanoF'
}

/** Cards of one stretch of line between two nodes, with the fault in it where it lies there. */
function stretch(
  { real, tempC, kind, ohms }: Planted,
  name: string,
  near: string,
  far: string,
  wireM: number,
  faultM: number | null,
  slow: boolean,
): string[] {
  const cards: string[] = []
  const ohmPerM = (real.ohm * (1 + BOOK.tempCoeffPerC * (tempC - 20))) / 1000
  const siemensPerM = (real.microS * 1e-6) / 1000
  const faradPerM = (real.nanoF * 1e-9) / 1000
  const run = (id: string, from: string, to: string, lengthM: number) => {
    const n = Math.max(2, Math.ceil((SECTIONS_PER_KM * lengthM) / 1000))
    const each = lengthM / n
    for (let i = 0; i < n; i++) {
      const [a, b] = [i === 0 ? from : `${id}_${i}`, i === n - 1 ? to : `${id}_${i + 1}`]
      cards.push(`R${id}_${i} ${a} ${b} ${Math.max(1e-6, ohmPerM * each)}`)
      for (const [end, node] of [a, b].entries()) {
        if (slow) cards.push(`C${id}_${i}_${end} ${node} 0 ${(faradPerM * each) / 2}`)
        else cards.push(`G${id}_${i}_${end} ${node} 0 ${node} 0 ${(siemensPerM * each) / 2}`)
      }
    }
  }
  if (faultM === null) {
    run(name, near, far, wireM)
    return cards
  }
  const [before, after] = [`${name}fa`, `${name}fb`]
  run(`${name}n`, near, before, faultM)
  run(`${name}r`, after, far, wireM - faultM)
  if (kind === 'short' || kind === 'leak') cards.push(`Rf ${before} 0 ${ohms}`, `Vf ${before} ${after} 0`)
  else if (kind === 'resistance') cards.push(`Rf ${before} ${after} ${ohms}`)
  else cards.push(`Rf ${before} ${after} 1e15`)
  return cards
}

/** What a perfect instrument would show. */
export async function shown(
  fault: Planted,
  { stand, toward, far, what }: Look,
  volts: Awaited<ReturnType<typeof simulator>>,
): Promise<number> {
  const slow = what === 'nanoF'
  const farNode =
    'line' in stand ? fault.lines.find(({ id }) => id === stand.line)![toward as 'from' | 'to'] : toward
  const first = 'at' in stand ? firstLine(fault.lines, stand.at, toward) : null
  const cards = fault.lines.flatMap((line) => {
    const { id, from, to, wireM } = line
    const faultM = fault.line === id ? fault.wireM : null
    if ('line' in stand && stand.line === id) {
      const at = stand.wireM
      const inFirst = faultM !== null && faultM <= at
      const [meterFirst, meterLast] = toward === 'from' ? ['meter', 'loose'] : ['loose', 'meter']
      return [
        ...stretch(fault, `${id}a`, from, meterFirst, at, inFirst ? faultM : null, slow),
        ...stretch(
          fault,
          `${id}b`,
          meterLast,
          to,
          wireM - at,
          faultM !== null && !inFirst ? faultM - at : null,
          slow,
        ),
      ]
    }
    const cut = (station: string) =>
      line === first && 'at' in stand && station === stand.at ? 'meter' : station
    return stretch(fault, id, cut(from), cut(to), wireM, faultM, slow)
  })
  if (far === 'short') cards.push(`Rshort ${farNode} 0 1e-4`)
  // What is cut off has a potential too.
  const nodes = new Set(cards.flatMap((card) => card.split(' ').slice(1, 3)))
  for (const node of nodes) if (node !== '0') cards.push(`Rleak_${node} ${node} 0 1e11`)
  if (!slow) {
    const [ohms] = await volts([...cards, 'Iin 0 meter 1'], ['meter'], 0)
    return ohms!
  }
  // At 1 Hz and 1 A: the length of the impedance, of which next to all is that of the capacitance.
  const [ohms] = await volts([...cards, 'Iin 0 meter dc 0 ac 1'], ['meter'], 1)
  return 1e9 / (2 * Math.PI * ohms!)
}

/** The first line of the way from one station to another. */
function firstLine(lines: readonly PlantedLine[], at: string, toward: string): PlantedLine {
  const leads = (line: PlantedLine, from: string, seen: ReadonlySet<PlantedLine>): boolean => {
    const next = line.from === from ? line.to : line.from
    if (next === toward) return true
    const more = new Set([...seen, line])
    return lines.some(
      (each) => !more.has(each) && (each.from === next || each.to === next) && leads(each, next, more),
    )
  }
  return lines.find((line) => (line.from === at || line.to === at) && leads(line, at, new Set()))!
}
