import { expect, test } from 'vitest'
import { spliceWireM } from '../../../src/map/layers/show-splices'

test('splices lie between the pieces of a pair, and where two pairs are spliced at one place there is one lozenge', () => {
  const piece = (pair: number, wireM: number) => ({ wireM, pair })
  expect(spliceWireM({ pieces: [piece(0, 400), piece(0, 400), piece(0, 100)] })).toEqual([400, 800])
  expect(spliceWireM({ pieces: [piece(0, 400), piece(1, 400), piece(0, 500), piece(1, 500)] })).toEqual([400])
  expect(spliceWireM({ pieces: [piece(0, 900)] })).toEqual([])
})
