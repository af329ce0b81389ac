import type { Circuit } from './netlist'

/** The piece of a circuit that hangs on the given node, by walking its lines. */
export function piece(circuit: Circuit, start: string): Circuit {
  const reached = new Set([start])
  for (let grew = true; grew; ) {
    grew = false
    for (const { from, to } of circuit.lines) {
      if (reached.has(from) === reached.has(to)) continue
      reached.add(from).add(to)
      grew = true
    }
  }
  return {
    stations: [...reached],
    lines: circuit.lines.filter(({ from }) => reached.has(from)),
    sets: Object.fromEntries(Object.entries(circuit.sets).filter(([id]) => reached.has(id))),
  }
}

/** The ports of a unit: what a circuit falls into when its station is taken out, each with the station again; and one for a set at the station itself. */
export function portsOf(circuit: Circuit, unit: string): readonly Circuit[] {
  const lines = circuit.lines.filter(({ from, to }) => from !== unit && to !== unit)
  const ports: Circuit[] = []
  for (const station of circuit.stations) {
    if (station === unit || ports.some(({ stations }) => stations.includes(station))) continue
    const { stations, sets } = piece({ ...circuit, lines }, station)
    const own = circuit.lines.filter(({ from, to }) => stations.includes(from) || stations.includes(to))
    ports.push({ stations: [...stations, unit], lines: own, sets })
  }
  if (!circuit.sets[unit]) return ports
  return [...ports, { stations: [unit], lines: [], sets: { [unit]: circuit.sets[unit] } }]
}
