import { later } from '../later'

/** What is asked of the ground comes with a script of its own. */
export const LineGround = later(async () => (await import('./line-ground')).LineGround)
export const RouteFrom = later(async () => (await import('./route-from')).RouteFrom)
