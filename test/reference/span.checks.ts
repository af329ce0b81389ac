import { type Hanging, hang, tensionAfterN, wireHeightM } from '../../src/measure/catenary'
import type { Result } from '../../src/problem'
import { checks } from './check'

const hung = (result: Result<Hanging>): Hanging => {
  if (!result.ok) throw new Error(result.problems[0]!.message)
  return result.value
}

const PARABOLA = 'the work reckons by the parabola, the program by the catenary'

// Forces stand in kilograms-force and weights in kg/m, as printed: every result is a ratio of them.
const note = checks(
  {
    source: { work: 'Note on sag, web page', place: 'worked example' },
    tolerancePct: 0.05,
    because: PARABOLA,
  },
  [
    {
      what: 'sag of 500 m at 10 000 kg, 1 kg/m',
      unit: 'm',
      published: 3.125,
      computed: hung(hang({ spanM: 500, weightNPerM: 1, horizontalN: 10_000 })).sagM,
    },
  ],
)

const mehta = checks(
  {
    source: { work: 'V. K. Mehta, Principles of Power System', place: 'ch. 8, worked example, from memory' },
    tolerancePct: 1.4,
    because: 'two digits are printed',
  },
  [
    {
      what: 'sag of 260 m at half of 3100 kg, 0.68 kg/m',
      unit: 'm',
      published: 3.7,
      computed: hung(hang({ spanM: 260, weightNPerM: 0.68, horizontalN: 1550 })).sagM,
    },
  ],
)

const crossing = hung(hang({ spanM: 300, riseM: 60, weightNPerM: 1, horizontalN: 2000 }))
const wadhwa = checks(
  {
    source: {
      work: 'C. L. Wadhwa, Electrical Power Systems',
      place: 'ex. 7.4: river crossing of 300 m between towers of 30 and 90 m, answers from memory',
    },
    tolerancePct: 2,
    because: `${PARABOLA}; on a slope of one in five that is 2 %`,
  },
  [
    { what: 'lowest point, from the lower tower', unit: 'm', published: -250, computed: crossing.lowestM },
    {
      what: 'height over the water in the middle',
      unit: 'm',
      published: 54.375,
      computed: 30 + wireHeightM(crossing, 150),
      tolerancePct: 0.5,
    },
  ],
)

const windless = tensionAfterN(
  300,
  { stiffnessN: 9320 * 240, expansionPerC: 18.44e-6 },
  { weightNPerM: Math.hypot(0.9, 38.5 * 0.0195), horizontalN: 4000, tempC: 0 },
  { weightNPerM: 0.9, tempC: 30 },
)

const changeOfState = checks(
  {
    source: {
      work: 'Textbook of electrical power, companion 2273',
      place: 'ex. 3.14: the wind falls, it warms by 30 °C',
    },
    tolerancePct: 0.01,
    because: 'eight digits are printed, from rounded inputs',
  },
  [{ what: 'stress of 240 mm²', unit: 'kg/m²', published: 11_951_292, computed: windless / 240e-6 }],
)

export const SPAN_CHECKS = [...note, ...mehta, ...wadhwa, ...changeOfState]
