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
  readonly source: string
}

/** 100 % of the International Annealed Copper Standard: 1/58 Ω·mm²/m. */
const STANDARD_COPPER_OHM_MM2_PER_M = 1 / 58

export const COPPER: ConductorMaterial = {
  name: 'annealed copper',
  ohmMm2PerM: STANDARD_COPPER_OHM_MM2_PER_M,
  tempCoeffPerC: 0.00393,
  kgPerM3: 8890,
  breakNPerMm2: 220,
  source: 'IEC 60028: resistivity, temperature coefficient, density; strength from memory',
}

export const HARD_DRAWN_COPPER: ConductorMaterial = {
  name: 'hard-drawn copper',
  ohmMm2PerM: (STANDARD_COPPER_OHM_MM2_PER_M * 878) / 859,
  tempCoeffPerC: 0.00384,
  kgPerM3: 8890,
  breakNPerMm2: 420,
  source:
    'derived: 878 pound-ohms per mile² of line copper against 859 of pure copper (an old wire-table book, p. 34); the rest from memory',
}

export const CADMIUM_COPPER: ConductorMaterial = {
  name: 'cadmium copper',
  ohmMm2PerM: STANDARD_COPPER_OHM_MM2_PER_M / 0.85,
  tempCoeffPerC: 0.0034,
  kgPerM3: 8940,
  breakNPerMm2: 500,
  source: 'about 1 % of cadmium, 85 % of the conductivity of standard copper: from memory',
}

export const ALUMINIUM: ConductorMaterial = {
  name: 'aluminium',
  ohmMm2PerM: STANDARD_COPPER_OHM_MM2_PER_M / 0.61,
  tempCoeffPerC: 0.00403,
  kgPerM3: 2703,
  breakNPerMm2: 165,
  source: '61 % of the conductivity of standard copper, IEC 60889 and ASTM B230, from memory',
}

export const GALVANISED_STEEL: ConductorMaterial = {
  name: 'galvanised steel',
  ohmMm2PerM: 0.17,
  tempCoeffPerC: 0.0047,
  kgPerM3: 7800,
  breakNPerMm2: 500,
  source: 'mild steel, from memory: 0.17 to 0.20 Ω·mm²/m',
}

export const COPPER_CLAD_STEEL_30: ConductorMaterial = {
  name: 'copper-clad steel, 30 %',
  ohmMm2PerM: STANDARD_COPPER_OHM_MM2_PER_M / 0.3,
  tempCoeffPerC: 0.0038,
  kgPerM3: 8150,
  breakNPerMm2: 880,
  source: 'ASTM B227, grade 30 HS: resistivity; temperature coefficient, density and strength from memory',
}
