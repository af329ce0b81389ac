import { later } from '../study/later'

/** What is suggested comes with a script of its own. */
export const RouteOffer = later(async () => (await import('./route-offer')).RouteOffer)
export const NetOffer = later(async () => (await import('./net-offer')).NetOffer)
