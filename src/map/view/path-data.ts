import type { Point } from './map-view'

const at = ({ x, y }: Point): string => `${x.toFixed(1)} ${y.toFixed(1)}`

/** The path through points, as SVG writes it. */
export const pathData = (points: readonly Point[]): string =>
  points.length ? `M${points.map(at).join('L')}` : ''
