import type { Cell } from './cell'
import { allowance, dataSheet, derivedOnMemory, fromMemory, read } from './sources'

const LEAD_ACID_SHEETS = 'data sheets of sealed lead-acid batteries of 5 and 40 Ah'

export const LEAD_ACID_12_VOLT: Cell = {
  id: 'lead-acid-12',
  name: '12 V sealed lead-acid, 7 Ah',
  volts: 12,
  endVolts: 10.5,
  ohms: 0.03,
  ampHours: 7,
  capacity: [
    { drainMA: 350, ampHours: 7 },
    { drainMA: 1200, ampHours: 6 },
    { drainMA: 4200, ampHours: 4.2 },
  ],
  coldFactor: [
    { tempC: -20, factor: 0.5 },
    { tempC: -10, factor: 0.74 },
    { tempC: 10, factor: 0.9 },
    { tempC: 20, factor: 1 },
  ],
  curve: [
    { part: 0, volts: 12.7 },
    { part: 0.1, volts: 12.6 },
    { part: 0.2, volts: 12.5 },
    { part: 0.3, volts: 12.3 },
    { part: 0.4, volts: 12.2 },
    { part: 0.5, volts: 12.1 },
    { part: 0.6, volts: 12 },
    { part: 0.7, volts: 11.8 },
    { part: 0.8, volts: 11.7 },
    { part: 0.9, volts: 11.6 },
    { part: 1, volts: 10.5 },
  ],
  kg: 2.4,
  source: `rated over 20 hours; ${LEAD_ACID_SHEETS}`,
  sources: {
    volts: dataSheet('Nominal, 2 V a cell.'),
    endVolts: dataSheet(`1.75 V a cell over 20 and 10 hours: ${LEAD_ACID_SHEETS}.`),
    ohms: dataSheet(
      '27 mΩ when charged, a sealed battery of 5 Ah: its data sheet; old ones have several times that.',
    ),
    ampHours: dataSheet('By its name, over 20 hours.'),
    capacity: dataSheet(`0.85 of the rating over 5 hours and 0.6 over 1 hour: ${LEAD_ACID_SHEETS}.`),
    coldFactor: derivedOnMemory(
      '90 % at 10 °C and 74 % at −10 °C: data sheet of a sealed battery of 40 Ah; −20 °C from memory.',
    ),
    curve: read(
      'Volts at rest against charge, 12.7 to 11.6 V, of an absorbed-glass-mat battery: a travellers’ page on 12 V batteries; its end by the data sheets.',
    ),
    kg: fromMemory('2.0 to 2.65 kg: a seller has 2.0 kg; the rest from memory.'),
  },
}

export const LITHIUM_ION: Cell = {
  id: 'li-ion-18650',
  name: 'Lithium-ion cell, 18650, 2.6 Ah',
  volts: 3.7,
  endVolts: 3,
  ohms: 0.09,
  ampHours: 2.6,
  capacity: [
    { drainMA: 520, ampHours: 2.6 },
    { drainMA: 2600, ampHours: 2.4 },
  ],
  coldFactor: [
    { tempC: -10, factor: 0.6 },
    { tempC: 0, factor: 0.8 },
    { tempC: 20, factor: 1 },
  ],
  curve: [
    { part: 0, volts: 4.18 },
    { part: 0.1, volts: 4.06 },
    { part: 0.2, volts: 3.97 },
    { part: 0.3, volts: 3.88 },
    { part: 0.4, volts: 3.81 },
    { part: 0.5, volts: 3.74 },
    { part: 0.6, volts: 3.69 },
    { part: 0.7, volts: 3.65 },
    { part: 0.8, volts: 3.59 },
    { part: 0.9, volts: 3.48 },
    { part: 1, volts: 2.75 },
  ],
  kg: 0.047,
  source: 'product specification of a cell 18650 of 2.6 Ah; the way of its volts from memory',
  sources: {
    volts: dataSheet('3.7 V: product specification of a cell of 2.6 Ah, 3.4.'),
    endVolts: read('3.0 V: another maker’s standard discharge; the cell itself goes to 2.75 V.'),
    ohms: dataSheet('At most 90 mΩ at 1 kHz: another maker’s sheet of a cell of 2.6 Ah.'),
    ampHours: dataSheet('2.6 Ah over 5 hours to 2.75 V: product specification of a cell of 2.6 Ah, 3.1.'),
    capacity: fromMemory('Over 5 hours by the specification; over 1 hour from memory.'),
    coldFactor: allowance('Allowance: it may be discharged down to −10 °C.'),
    curve: fromMemory(
      'Charged to 4.2 V and spent at 2.75 V by the specification; the way between from memory.',
    ),
    kg: dataSheet('47 g at most: product specification of a cell of 2.6 Ah, 3.11.'),
  },
}
