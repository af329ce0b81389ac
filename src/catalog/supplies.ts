import { BOARDS } from './supplies-boards'
import { EXCHANGES } from './supplies-exchanges'
import { FEEDS } from './supplies-feed'
import { RINGDOWNS } from './supplies-ringdown'
import { TALK_BATTERIES } from './supplies-series'
import type { Supply } from './supply'

/** The supplies that the program knows of its own. */
export const SUPPLIES: readonly Supply[] = [
  ...FEEDS,
  ...RINGDOWNS,
  ...TALK_BATTERIES,
  ...BOARDS,
  ...EXCHANGES,
]
