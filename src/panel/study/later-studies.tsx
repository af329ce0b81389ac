import { later } from '../later'

/** What is studied on demand comes with a script of its own. */
export const ReachStudies = later(async () => (await import('./circuit-studies')).ReachStudies)
export const UpkeepStudies = later(async () => (await import('./circuit-studies')).UpkeepStudies)
export const EarthCalculator = later(async () => (await import('./earth-calculator')).EarthCalculator)
