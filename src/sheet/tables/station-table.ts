import { gridReference } from '../../geo/grid-reference'
import { circuitName, stationName } from '../../plan/plan'
import { nameIn } from '../../words/tongue'
import type { Table } from '../layout/table'
import type { PaperSource } from '../paper-source'

/** Every station: where it stands, what hangs there, which lines meet there (by number). */
export function stationTable({ plan }: PaperSource): Table {
  const lines = [...plan.lines.values()]
  const circuits = [...plan.circuits.values()]
  return {
    title: 'Stations',
    columns: [
      { head: 'Station', share: 26 },
      { head: 'Grid reference (MGRS)', share: 34 },
      { head: 'Latitude, longitude', share: 34 },
      { head: 'Lines', share: 16 },
      { head: 'Sets and supply', share: 60 },
    ],
    rows: [...plan.stations.values()].map((station) => {
      const [lonDeg, latDeg] = station.position
      const equipment = circuits.flatMap((circuit) => {
        const set = circuit.sets.get(station.id)
        const supply = circuit.supply?.at === station.id ? circuit.supply.type : undefined
        const names = [
          ...(set === undefined ? [] : [nameIn(plan, set)]),
          ...(supply === undefined ? [] : [nameIn(plan, supply)]),
        ]
        return names.length > 0 ? [`${circuitName(plan, circuit)}: ${names.join(', ')}`] : []
      })
      return [
        stationName(plan, station.id),
        gridReference(station.position) ?? 'outside the grid',
        `${latDeg.toFixed(5)}°, ${lonDeg.toFixed(5)}°`,
        lines
          .flatMap((line, i) => (line.from === station.id || line.to === station.id ? [i + 1] : []))
          .join(', '),
        equipment.join('; ') || 'joint only',
      ]
    }),
  }
}
