import { later } from './later'

/** The largest cards come when something is first chosen: the first screen shows the whole plan. */
export const CircuitCard = later(async () => (await import('./circuit/circuit-card')).CircuitCard)
export const LineCard = later(async () => (await import('./line/line-card')).LineCard)
