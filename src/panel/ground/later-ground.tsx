import { later } from '../later'

/** The ground of a line, with its profile, comes with a script of its own. */
export const LineGround = later(async () => (await import('./line-ground')).LineGround)
