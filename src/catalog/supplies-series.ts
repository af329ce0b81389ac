import { ALKALINE_9_VOLT, ALKALINE_D, type Cell, inSeries, LEAD_ACID_12_VOLT } from './cells'
import type { Supply } from './supply'

const RED_LED = { forwardVolts: 2, ohms: 10 }
const RED_LED_SOURCE =
  'Red LED, 2.0 V at 20 mA (1.8 to 2.2 V): a published table of LED colours; its slope from memory.'
const SMALL_LAMP = { forwardVolts: 0, ohms: 200 }
const SMALL_LAMP_SOURCE =
  'Small 12 V lamp, 60 mA and 200 Ω when hot, from memory; cold it has a tenth of that.'

/** Cells in one leg of a set: no bell, and both sets draw from it as long as they talk. */
function talkBattery(battery: {
  readonly id: string
  readonly name: string
  readonly cell: Cell
  readonly count: number
  readonly indicator?: { readonly value: NonNullable<Supply['indicator']>; readonly source: string }
}): Supply {
  const { cell, count, indicator } = battery
  return {
    id: battery.id,
    name: battery.name,
    kind: 'series',
    ...inSeries(cell, count),
    ...(indicator && { indicator: indicator.value }),
    source: `${count} × ${cell.name}: ${cell.source}`,
    sources: {
      volts: `Derived: ${count} × ${cell.volts} V. ${cell.sources.volts}`,
      endVolts: `Derived: ${count} × ${cell.endVolts} V. ${cell.sources.endVolts}`,
      ohms: `Derived: ${count} × ${cell.ohms} Ω. ${cell.sources.ohms}`,
      ampHours: cell.sources.ampHours,
      ...(indicator && { indicator: indicator.source }),
    },
  }
}

export const TALK_BATTERIES: readonly Supply[] = [
  talkBattery({
    id: 'two-9-volt',
    name: 'Two 9 V cells in one leg',
    cell: ALKALINE_9_VOLT,
    count: 2,
  }),
  talkBattery({
    id: 'two-9-volt-led',
    name: 'Two 9 V cells and an LED in one leg',
    cell: ALKALINE_9_VOLT,
    count: 2,
    indicator: { value: RED_LED, source: RED_LED_SOURCE },
  }),
  talkBattery({
    id: 'eight-d-cells',
    name: 'Eight D cells in one leg',
    cell: ALKALINE_D,
    count: 8,
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
    indicator: { value: SMALL_LAMP, source: SMALL_LAMP_SOURCE },
  }),
]
