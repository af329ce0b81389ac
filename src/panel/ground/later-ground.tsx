import { later } from '../later'

/** What is asked of the ground comes with scripts of its own. */
export const LineGround = later(async () => (await import('./line-ground')).LineGround)
export const RouteFrom = later(async () => (await import('./route-from')).RouteFrom)
export const NetOffer = later(async () => (await import('./net-offer')).NetOffer)
export const HazardImport = later(async () => (await import('./hazard-import')).HazardImport)
