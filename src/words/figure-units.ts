import type { Quantity } from './units'

/** The unit is the last word of a figure's name: what it is, by that word. The longer ones first. */
const BY_LAST_WORD: readonly (readonly [ending: RegExp, quantity: Quantity])[] = [
  [/ohmperkm$/i, 'ohmPerKm'],
  [/nanofperkm$/i, 'nanoFPerKm'],
  [/millihperkm$/i, 'milliHPerKm'],
  [/microsperkm$/i, 'microSPerKm'],
  [/kgperkm$/i, 'kgPerKm'],
  [/kmperhour$/i, 'kmPerHour'],
  [/MPerHour$/, 'lengthM'],
  [/minutesperday$/i, 'minute'],
  [/perc$/i, 'perC'],
  [/tempc$/i, 'tempC'],
  [/amphours$/i, 'ampHour'],
  [/micros$/i, 'microS'],
  [/microf$/i, 'microF'],
  [/henries$/i, 'henry'],
  [/ohms$/i, 'ohm'],
  [/volts$/i, 'volt'],
  [/pct$/i, 'pct'],
  [/MA$/, 'mA'],
  [/Db$/, 'db'],
  [/hz$/i, 'hz'],
  [/kg$/i, 'massKg'],
  [/W$/, 'watt'],
  [/Mm$/, 'diameterMm'],
  [/Min$/, 'minute'],
  [/Factor$/, 'times'],
  [/N$/, 'forceN'],
  [/M$/, 'lengthM'],
]

/** The quantity of a figure by its name; undefined where the name ends in no unit. */
export const quantityOf = (name: string): Quantity | undefined => found(name)?.[1]

const found = (name: string) => BY_LAST_WORD.find(([ending]) => ending.test(name))

/** A figure's name without its unit, in words: `talkMA` is talk. */
export const spacedName = (name: string): string =>
  name
    .replace(found(name)?.[0] ?? '', '')
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase()
