import { allowance, dataSheet, read, type Sources, type Spread } from './sources'

/** How far real batteries lie from their printed figures, and where that comes from. */
export const BATTERY_SPREAD: Spread = { volts: 4, ohms: 50, ampHours: 20 }
export const BATTERY_SPREAD_SOURCES: Sources = {
  'spread.volts': allowance('Allowance: fresh to a few months on the shelf.'),
  'spread.ohms': allowance('Allowance: cells of one make differ little, old and cold ones have more.'),
  'spread.ampHours': allowance('Allowance: published tests of one size differ by a fifth.'),
}

export const FEED_SPREAD: Spread = { volts: 5, ohms: 10 }
export const FEED_SPREAD_SOURCES: Sources = {
  spread: allowance('Allowance: parts of ± 5 to 10 %.'),
}

export const RING_SPREAD: Spread = { 'ring.volts': 10, 'ring.ohms': 30 }
export const RING_SPREAD_SOURCES: Sources = {
  'spread.ring.volts': dataSheet('± 10 %: gateway data sheets.'),
  'spread.ring.ohms': allowance('Allowance: lamps and resistors differ from board to board.'),
}

/** Electronic line circuits hold their current to ± 8 %. */
export const LIMIT_SPREAD: Spread = { maxMA: 8 }
export const LIMIT_SPREAD_SOURCES: Sources = {
  'spread.maxMA': dataSheet('± 8 %: data sheet of a ringing line interface circuit (2001), table 11.'),
}

export const LED = { forwardVolts: 2, ohms: 10, minMA: 1 }
export const LED_SOURCES: Sources = {
  'indicator.forwardVolts': read('Red LED, 2.0 V at 20 mA (1.8 to 2.2 V): a published table of LED colours.'),
  'indicator.ohms': allowance('Allowance: the slope of a small LED.'),
  'indicator.minMA': allowance('Allowance: a red LED is seen in the shade from about 1 mA on.'),
  'spread.indicator.forwardVolts': read('1.8 to 2.2 V: a published table of LED colours.'),
  'spread.indicator.ohms': allowance('Allowance.'),
}
export const LED_SPREAD: Spread = { 'indicator.forwardVolts': 10, 'indicator.ohms': 50 }
