import { allowance, dataSheet, derived, fromMemory, read, type Sources } from './sources'
import { BATTERY_BEHIND, BEHIND_SOURCES, twoBatteriesKg } from './supplies-feed'
import type { Supply } from './supply'
import {
  FEED_SPREAD,
  FEED_SPREAD_SOURCES,
  LIMIT_SPREAD,
  LIMIT_SPREAD_SOURCES,
  RING_SPREAD,
  RING_SPREAD_SOURCES,
} from './supply-spread'

const SOURCES: Sources = {
  volts: read('48 V: public standard, as a tutorial on telephones (1985) gives it.'),
  ohms: fromMemory('Behind the limit a few hundred Ω at the most, from memory.'),
  maxMA: dataSheet('20 to 26 mA: technical data of two makers of gateways with analog ports.'),
  offHookMA: dataSheet(
    'Not more than 10 mA is on hook, 15 mA is off hook: manual of a telephone line simulator, electrical specifications.',
  ),
  ports: derived('By the name of the exchange.'),
  'ring.volts': dataSheet('55 to 80 V rms: data sheets of gateways with analog ports.'),
  'ring.hz': read('20 Hz: 47 CFR 68.312, type A.'),
  'ring.ohms': fromMemory('A few hundred Ω, from memory.'),
  'ring.maxLoad': fromMemory(
    '2 to 5 ringer equivalents a port, from memory; a telephone line simulator drives 5 by its manual.',
  ),
  insertionDb: fromMemory('Exchanges set 0 to 3 dB between their own ports, from memory.'),
  powerW: allowance('Allowance: 4 W, 0.4 W a port that waits, and twice that where many are in use.'),
  kg: derived('Allowance of 1 kg and 0.1 kg a port, and two batteries.'),
  'spread.offHookMA': allowance('Allowance: makers differ.'),
  'spread.powerW': allowance('Allowance: units differ by a factor of two.'),
  'spread.insertionDb': allowance('Allowance: as it is set.'),
  ...BEHIND_SOURCES,
  ...FEED_SPREAD_SOURCES,
  ...RING_SPREAD_SOURCES,
  ...LIMIT_SPREAD_SOURCES,
}

/** A small automatic exchange with analog ports. */
const exchange = (ports: number): Supply => ({
  id: `exchange-${ports}`,
  name: `Automatic exchange, ${ports} analog ports`,
  kind: 'exchange',
  volts: 48,
  ohms: 200,
  maxMA: 25,
  offHookMA: 10,
  ports,
  ring: { volts: 65, hz: 20, ohms: 300, maxLoad: 3 },
  insertionDb: 1,
  powerW: { idle: 4 + 0.4 * ports, talk: 4 + 0.8 * ports, ring: 8 + 0.8 * ports },
  fedBy: BATTERY_BEHIND,
  kg: 1 + 0.1 * ports + twoBatteriesKg,
  source: 'gateways and small exchanges with analog ports: data sheets for ringing; the rest from memory',
  sources: SOURCES,
  spread: {
    ...FEED_SPREAD,
    ...RING_SPREAD,
    ...LIMIT_SPREAD,
    offHookMA: 30,
    insertionDb: 100,
    'powerW.idle': 100,
    'powerW.talk': 100,
    'powerW.ring': 100,
  },
})

/** Exchanges of 2 to 32 ports. */
export const EXCHANGES: readonly Supply[] = [2, 4, 8, 16, 24, 32].map(exchange)
