declare module 'world-atlas/land-50m.json' {
  import type { GeometryCollection, Topology } from 'topojson-specification'

  const topology: Topology<{ land: GeometryCollection }>
  export default topology
}
