import { type Cell, inSeries } from './cell'
import { ALKALINE_9_VOLT, ALKALINE_D, LANTERN_6_VOLT } from './cells-alkaline'
import { LEAD_ACID_12_VOLT } from './cells-rechargeable'
import {
  allowance,
  derived,
  derivedOnMemory,
  fromMemory,
  type Source,
  type Sources,
  type Spread,
} from './sources'
import type { Supply } from './supply'
import { BATTERY_SPREAD, BATTERY_SPREAD_SOURCES, LED, LED_SOURCES, LED_SPREAD } from './supply-spread'

interface Indicator {
  readonly value: NonNullable<Supply['indicator']>
  readonly sources: Sources
  readonly spread: Spread
}

const RED_LED: Indicator = { value: LED, sources: LED_SOURCES, spread: LED_SPREAD }
export const SMALL_LAMP: Indicator = {
  value: { forwardVolts: 0, ohms: 200, minMA: 40 },
  sources: {
    'indicator.forwardVolts': derived('A filament is a resistance: it keeps no voltage back.'),
    'indicator.ohms': fromMemory(
      'Small 12 V lamp, 60 mA and 200 Ω when hot, from memory; cold it has a tenth of that.',
    ),
    'indicator.minMA': allowance(
      'Allowance: two thirds of its 60 mA, where by the usual power law a filament gives some 8 % of its light; at 25 mA it gives 0.4 %.',
    ),
    'spread.indicator.ohms': fromMemory('Lamps of 50 to 80 mA, from memory.'),
  },
  spread: { 'indicator.ohms': 30 },
}

/** Reckoned from so many of one cell; from memory where the cell's own figure is. */
const times = (count: number, of: number, unit: string, { kind, says }: Source): Source =>
  (kind === 'memory' ? derivedOnMemory : derived)(`${count} × ${of} ${unit}. ${says}`)

/** Volts, resistance, capacity and mass of so many cells in series, each with its source. */
export const batterySources = (cell: Cell, count: number): Sources => ({
  volts: times(count, cell.volts, 'V', cell.sources.volts),
  endVolts: times(count, cell.endVolts, 'V', cell.sources.endVolts),
  ohms: times(count, cell.ohms, 'Ω', cell.sources.ohms),
  ampHours: cell.sources.ampHours,
  kg: times(count, cell.kg, 'kg', cell.sources.kg),
  ...BATTERY_SPREAD_SOURCES,
})

/** Cells in one leg of a set: no bell, and both sets draw from it as long as they talk. */
function talkBattery(battery: {
  readonly id: string
  readonly name: string
  readonly cell: Cell
  readonly count: number
  readonly indicator?: Indicator
}): Supply {
  const { cell, count, indicator } = battery
  return {
    id: battery.id,
    name: battery.name,
    kind: 'series',
    ...inSeries(cell, count),
    ...(indicator && { indicator: indicator.value }),
    kg: count * cell.kg,
    source: `${count} × ${cell.name}: ${cell.source}`,
    sources: { ...batterySources(cell, count), ...indicator?.sources },
    spread: { ...BATTERY_SPREAD, ...indicator?.spread },
  }
}

export const TALK_BATTERIES: readonly Supply[] = [
  talkBattery({
    id: 'two-9-volt',
    name: 'Two 9 V batteries in one leg',
    cell: ALKALINE_9_VOLT,
    count: 2,
  }),
  talkBattery({
    id: 'two-9-volt-led',
    name: 'Two 9 V batteries and an LED in one leg',
    cell: ALKALINE_9_VOLT,
    count: 2,
    indicator: RED_LED,
  }),
  talkBattery({
    id: 'eight-d-cells',
    name: 'Eight D cells in one leg',
    cell: ALKALINE_D,
    count: 8,
  }),
  talkBattery({
    id: 'three-lantern',
    name: 'Three 6 V lantern batteries in one leg',
    cell: LANTERN_6_VOLT,
    count: 3,
  }),
  talkBattery({
    id: 'lead-acid-24',
    name: 'Two 12 V lead-acid batteries in one leg',
    cell: LEAD_ACID_12_VOLT,
    count: 2,
  }),
  talkBattery({
    id: 'lead-acid-24-lamp',
    name: 'Two 12 V lead-acid batteries and a lamp in one leg',
    cell: LEAD_ACID_12_VOLT,
    count: 2,
    indicator: SMALL_LAMP,
  }),
]
