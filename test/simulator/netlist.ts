import type { PlanFile } from './random-plan'

/**
 * Netlists of a plan's circuit for a general-purpose circuit simulator, written from the plan file's own words and not from
 * the program's engine: a line is a ladder of many equal sections, a bell is R, L and C in series, a set off hook a resistor.
 */

/**
 * Sections for each unit of |γl|: a ladder of π sections x = |γl| / n long misses γl by x² / 24 of it, here 0.003 %. Even a line of
 * 10 Np comes out within 0.03 %, a third of the 0.1 % that is asked of the program.
 */
const SECTIONS_PER_NEPER = 40

const sectionsOf = (line: Circuit['lines'][number], hz: number, perNeper: number): number => {
  const omega = 2 * Math.PI * hz
  const series = Math.hypot(line.ohm, omega * line.henry)
  const shunt = Math.hypot(line.siemens, omega * line.farad)
  return Math.max(2, Math.ceil(perNeper * Math.sqrt(series * shunt)))
}

export interface Circuit {
  readonly stations: readonly string[]
  readonly lines: readonly {
    from: string
    to: string
    ohm: number
    henry: number
    farad: number
    siemens: number
    electrodes: readonly [number, number] | null
  }[]
  // biome-ignore lint/suspicious/noExplicitAny: a catalog entry as JSON
  readonly sets: Readonly<Record<string, any>>
}

/** @param wireM electrical length of each line by id, m */
export function circuitOf(file: PlanFile, wireM: Readonly<Record<string, number>>): Circuit {
  const { catalog, circuits, weather, wireTempC } = file.plan
  const wanted: string[] = circuits[0].lines
  const lines = file.features
    .filter((feature: PlanFile) => wanted.includes(feature.id))
    .map(({ id, properties }: PlanFile) => {
      const wire = catalog.wires.find((entry: PlanFile) => entry.id === properties.wire)
      const km = wireM[id]! / 1000
      const earth = properties.return === 'earth'
      const micro = weather === 'wet' ? wire.wetMicroSPerKm : wire.dryMicroSPerKm
      return {
        from: properties.from,
        to: properties.to,
        ohm: wire.loopOhmPerKm * (1 + wire.tempCoeffPerC * (wireTempC - 20)) * km * (earth ? 0.5 : 1),
        henry: (wire.loopMilliHPerKm / 1000) * km,
        farad: wire.nanoFPerKm * 1e-9 * km,
        siemens: micro * 1e-6 * km,
        electrodes: earth ? properties.electrodeOhms : null,
      }
    })
  const sets = Object.fromEntries(
    Object.entries(circuits[0].sets).map(([station, type]) => [
      station,
      catalog.sets.find((entry: PlanFile) => entry.id === type),
    ]),
  )
  return {
    stations: [...new Set<string>(lines.flatMap((line: PlanFile) => [line.from, line.to]))],
    lines,
    sets,
  }
}

/** The lines of a circuit as a ladder network; node of a station is its id. */
export function ladder(circuit: Circuit, hz: number, perNeper = SECTIONS_PER_NEPER): string[] {
  const cards: string[] = []
  const dc = hz === 0
  // At 0 Hz a simulator shorts coils; leaving them out keeps the matrix small.
  for (const [k, line] of circuit.lines.entries()) {
    let near = line.from
    let far = line.to
    if (line.electrodes) {
      cards.push(
        `Rea${k} ${line.from} ea${k} ${line.electrodes[0]}`,
        `Reb${k} eb${k} ${line.to} ${line.electrodes[1]}`,
      )
      near = `ea${k}`
      far = `eb${k}`
    }
    const n = sectionsOf(line, hz, perNeper)
    for (let i = 0; i < n; i++) {
      const a = i === 0 ? near : `x${k}_${i}`
      const b = i === n - 1 ? far : `x${k}_${i + 1}`
      if (dc) cards.push(`R${k}_${i} ${a} ${b} ${line.ohm / n}`)
      else {
        cards.push(
          `R${k}_${i} ${a} y${k}_${i} ${line.ohm / n}`,
          `L${k}_${i} y${k}_${i} ${b} ${line.henry / n}`,
        )
      }
    }
    for (let i = 0; i <= n; i++) {
      const node = i === 0 ? near : i === n ? far : `x${k}_${i}`
      const share = i === 0 || i === n ? 0.5 : 1
      cards.push(`G${k}_${i} ${node} 0 ${node} 0 ${(line.siemens / n) * share}`)
      if (!dc) cards.push(`C${k}_${i} ${node} 0 ${(line.farad / n) * share}`)
    }
  }
  return cards
}

/** Bells of all sets but those named, across the pair. */
export function bells(circuit: Circuit, except: readonly string[], hz: number): string[] {
  return Object.entries(circuit.sets).flatMap(([station, { ringer }]) => {
    if (!ringer || except.includes(station)) return []
    if (hz === 0) return ringer.microF ? [] : [`Rb_${station} ${station} 0 ${ringer.ohms}`]
    const coil = ringer.henries
      ? `Lb_${station} bl_${station} bc_${station} ${ringer.henries}`
      : `Rl_${station} bl_${station} bc_${station} 1e-9`
    const capacitor = ringer.microF
      ? `Cb_${station} bc_${station} 0 ${ringer.microF * 1e-6}`
      : `Rc_${station} bc_${station} 0 1e-9`
    return [`Rb_${station} ${station} bl_${station} ${ringer.ohms}`, coil, capacitor]
  })
}
