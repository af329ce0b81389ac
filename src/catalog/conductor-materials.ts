import { dataSheet, derived, fromMemory, read, type Source } from './sources'

/** What a conductor is made of. */
export interface ConductorMaterial {
  readonly name: string
  /** Resistivity at 20 °C, Ω·mm²/m. */
  readonly ohmMm2PerM: number
  /** Relative rise of resistance per °C above 20 °C, 1/°C. */
  readonly tempCoeffPerC: number
  readonly kgPerM3: number
  /** Tensile strength, N/mm². */
  readonly breakNPerMm2: number
  /** Elasticity of the drawn wire, N/mm², and expansion, 1/°C. */
  readonly modulusNPerMm2: number
  readonly expansionPerC: number
  readonly sources: {
    readonly ohmMm2PerM: Source
    readonly tempCoeffPerC: Source
    readonly kgPerM3: Source
    readonly breakNPerMm2: Source
    readonly modulusNPerMm2: Source
    readonly expansionPerC: Source
  }
}

/** Standard copper as IEC 60028 (1925) has it; the numbers themselves are from memory, and what was read bears them out. */
const STANDARD_RESISTIVITY = derived(
  '1/58 Ω·mm²/m (IEC 60028): the resistances of eleven gauges in NBS Handbook 100, as a page repeats them, follow from it to 0.05 %.',
)
const STANDARD_COEFFICIENT = derived(
  '0.00393 per °C (IEC 60028): pairs of four gauges at four temperatures in a line-equipment practice (2003), table 9, follow from it to 0.1 %.',
)
const STANDARD_DENSITY = derived(
  '8.89 g/cm³ (IEC 60028): the weights of solid wire in GO 95 (California), appendix B, table 17, follow from it to 0.2 %.',
)
/** General Order 95 of the California Public Utilities Commission. */
const GO_95 = 'GO 95 (California), appendix B'

/** 100 % of the International Annealed Copper Standard: 1/58 Ω·mm²/m. */
const STANDARD_COPPER_OHM_MM2_PER_M = 1 / 58

const COPPER_MODULUS = read(
  'Copper and its alloys 16 000 to 18 000 ksi, 110 to 124 kN/mm²: a university course’s table of properties.',
)
const COPPER_EXPANSION = read(
  '17.0 · 10⁻⁶ per °C of electrolytic copper: a table of the expansion of metals; a university course has 16.6 to 17.6.',
)

export const COPPER: ConductorMaterial = {
  name: 'annealed copper',
  ohmMm2PerM: STANDARD_COPPER_OHM_MM2_PER_M,
  tempCoeffPerC: 0.00393,
  kgPerM3: 8890,
  breakNPerMm2: 220,
  modulusNPerMm2: 115_000,
  expansionPerC: 17e-6,
  sources: {
    ohmMm2PerM: STANDARD_RESISTIVITY,
    tempCoeffPerC: STANDARD_COEFFICIENT,
    kgPerM3: STANDARD_DENSITY,
    breakNPerMm2: read(
      'Soft copper: 32 000 to 36 000 lb/in² (an old wire-table book, p. 27), the lowest is taken.',
    ),
    modulusNPerMm2: COPPER_MODULUS,
    expansionPerC: COPPER_EXPANSION,
  },
}

export const HARD_DRAWN_COPPER: ConductorMaterial = {
  name: 'hard-drawn copper',
  ohmMm2PerM: (STANDARD_COPPER_OHM_MM2_PER_M * 878) / 859,
  tempCoeffPerC: 0.00384,
  kgPerM3: 8890,
  breakNPerMm2: 447,
  modulusNPerMm2: 120_000,
  expansionPerC: 17e-6,
  sources: {
    ohmMm2PerM: derived(
      '878 pound-ohms per mile² of line copper against 859 of pure copper (an old wire-table book, p. 27).',
    ),
    tempCoeffPerC: derived('The coefficient of annealed copper times the share of its conductivity.'),
    kgPerM3: STANDARD_DENSITY,
    breakNPerMm2: derived(`551 lb of a wire of 0.104 in: ${GO_95}, table 17 (least strength by ASTM B1).`),
    modulusNPerMm2: COPPER_MODULUS,
    expansionPerC: COPPER_EXPANSION,
  },
}

export const CADMIUM_COPPER: ConductorMaterial = {
  name: 'cadmium copper',
  ohmMm2PerM: STANDARD_COPPER_OHM_MM2_PER_M / 0.85,
  tempCoeffPerC: 0.0034,
  kgPerM3: 8940,
  breakNPerMm2: 500,
  modulusNPerMm2: 125_000,
  expansionPerC: 17e-6,
  sources: {
    ohmMm2PerM: fromMemory('About 1 % of cadmium, 85 % of the conductivity of standard copper: from memory.'),
    tempCoeffPerC: fromMemory('From memory.'),
    kgPerM3: fromMemory('From memory.'),
    breakNPerMm2: fromMemory('From memory.'),
    modulusNPerMm2: fromMemory('From memory.'),
    expansionPerC: COPPER_EXPANSION,
  },
}

export const ALUMINIUM: ConductorMaterial = {
  name: 'aluminium',
  ohmMm2PerM: STANDARD_COPPER_OHM_MM2_PER_M / 0.61,
  tempCoeffPerC: 0.00403,
  kgPerM3: 2703,
  breakNPerMm2: 165,
  modulusNPerMm2: 65_000,
  expansionPerC: 23e-6,
  sources: {
    ohmMm2PerM: fromMemory(
      '61 % of the conductivity of standard copper: IEC 60889 and ASTM B230, from memory.',
    ),
    tempCoeffPerC: fromMemory('IEC 60889, from memory.'),
    kgPerM3: fromMemory('IEC 60889, from memory.'),
    breakNPerMm2: fromMemory('From memory.'),
    modulusNPerMm2: read(
      '62 to 69 kN/mm² of nearly pure aluminium (1199, 1100, 1050): a science encyclopaedia’s table of elasticity.',
    ),
    expansionPerC: read('23 · 10⁻⁶ per °C: a university course’s table of properties.'),
  },
}

export const GALVANISED_STEEL: ConductorMaterial = {
  name: 'galvanised steel',
  ohmMm2PerM: 0.17,
  tempCoeffPerC: 0.0047,
  kgPerM3: 7860,
  breakNPerMm2: 412,
  modulusNPerMm2: 200_000,
  expansionPerC: 11.5e-6,
  sources: {
    ohmMm2PerM: derived(
      '56 Ω per mile of 12½ gauge (0.099 in) steel fence wire: a fence maker’s page; that is 0.173 Ω·mm²/m. Hard steel has up to 0.20.',
    ),
    tempCoeffPerC: fromMemory('From memory.'),
    kgPerM3: derived(
      '25 kg coils of 648 m of 2.5 mm and of 253 m of 4 mm: a wire maker’s advertisement (1980).',
    ),
    breakNPerMm2: derived('460 lb of 12½ gauge (0.099 in) low-carbon wire: a maker’s page on farm fencing.'),
    modulusNPerMm2: read(
      '28 000 to 30 000 ksi, 193 to 207 kN/mm²: a university course’s table of properties.',
    ),
    expansionPerC: read(
      '10.8 · 10⁻⁶ per °C of carbon steel, 11 to 13 of steel as its make-up has it: a table of the expansion of materials.',
    ),
  },
}

export const COPPER_CLAD_STEEL_30: ConductorMaterial = {
  name: 'copper-clad steel, 30 %',
  ohmMm2PerM: STANDARD_COPPER_OHM_MM2_PER_M / 0.3,
  tempCoeffPerC: 0.0038,
  kgPerM3: 8150,
  breakNPerMm2: 880,
  modulusNPerMm2: 165_000,
  expansionPerC: 13e-6,
  sources: {
    ohmMm2PerM: read('30 % of the conductivity of standard copper: ASTM B227, grade 30 HS.'),
    tempCoeffPerC: fromMemory('From memory.'),
    kgPerM3: derived(`0.0728 lb per foot of 0.162 in: ${GO_95}, table 22.`),
    breakNPerMm2: derived(
      `2680 lb of 0.162 in, high strength: ${GO_95}, table 22; that is 897 N/mm², rounded down.`,
    ),
    modulusNPerMm2: fromMemory('From memory.'),
    expansionPerC: fromMemory('From memory.'),
  },
}

export const COPPER_CLAD_ALUMINIUM: ConductorMaterial = {
  name: 'copper-clad aluminium, 10 %',
  ohmMm2PerM: 0.02743,
  tempCoeffPerC: 0.004,
  kgPerM3: 3320,
  breakNPerMm2: 138,
  modulusNPerMm2: 70_000,
  expansionPerC: 22e-6,
  sources: {
    ohmMm2PerM: fromMemory(
      'ASTM B566, class 10A, from memory; wire sold without a standard may have less copper.',
    ),
    tempCoeffPerC: fromMemory('As aluminium, from memory.'),
    kgPerM3: dataSheet(
      '63 % lighter than copper, with 10 to 15 % of copper by volume: a cable maker’s guide to such wire.',
    ),
    breakNPerMm2: fromMemory('ASTM B566, annealed, from memory.'),
    modulusNPerMm2: derived('A tenth of copper and the rest aluminium, by their areas.'),
    expansionPerC: derived('A tenth of copper and the rest aluminium, by their stiffness.'),
  },
}
