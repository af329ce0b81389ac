import { expect, test } from 'vitest'
import { crsOfCode } from '../../src/files/systems/crs-of-code'
import { datumShiftOf } from '../../src/geo/datum-shift'
import { shiftWords } from '../../src/words/ground-words'

// Accuracies of the EPSG dataset's own transformations to WGS 84 (PROJ 9.1.1, EPSG 10.076; `projinfo -s EPSG:… -t EPSG:4326 --summary`
// prints the same of those that need no grid): DHDN 1777 3 m, OSGB36 1314 2 m, S-JTSK 15965 6 m, CH1903+ 1676 1 m.
test.each([
  [31467, 3],
  [27700, 2],
  [5514, 6],
  [2056, 1],
])('the shift of EPSG:%i is good to %i m', async (code, accuracyM) => {
  expect(datumShiftOf((await crsOfCode(code))!)).toEqual({ accuracyM })
})

test.each([32633, 4326, 3857, 3812])('EPSG:%i rests on a datum that agrees with WGS 84', async (code) => {
  expect(datumShiftOf((await crsOfCode(code))!)).toBeUndefined()
})

test('a shift that a file brings itself is of unknown accuracy, and so is one of 999 m', () => {
  const own = (more: string) =>
    datumShiftOf({ kind: 'other', definition: `+proj=tmerc +ellps=bessel +towgs84=577,90,463${more}` })
  expect(own('')).toEqual({ accuracyM: undefined })
  expect(own(' +accuracy=999')).toEqual({ accuracyM: undefined })
  expect(shiftWords(own('')!, 'metric')).toContain('nobody says')
  expect(shiftWords(own(' +accuracy=3')!, 'metric')).toContain('good to about 3 m')
  expect(shiftWords(own(' +accuracy=3')!, 'us')).toContain('good to about 9.8 ft')
})
