/** Impedances between some nodes of a network, Ω, row by row. */
export interface Ports {
  readonly re: Float64Array
  readonly im: Float64Array
  /** Rows, and columns. */
  readonly size: number
}

/** A fault as a part of the network: across the pair, in the wire, the wire broken, or none. */
export type FaultElement = 'across' | 'along' | 'broken' | 'none'

/** A two-port with less than this from end to end is taken to have it, Ω, so that its admittance stays finite. */
const LEAST_OHM = 1e-6

const chain = new Float64Array(8)
const y = new Float64Array(6)

/** c = a · b, of two chain matrices. */
function cascade(a: Float64Array, b: Float64Array, c: Float64Array): void {
  for (let row = 0; row < 2; row++) {
    for (let column = 0; column < 2; column++) {
      let [re, im] = [0, 0]
      for (let k = 0; k < 2; k++) {
        const [p, q] = [4 * row + 2 * k, 4 * k + 2 * column]
        re += a[p]! * b[q]! - a[p + 1]! * b[q + 1]!
        im += a[p]! * b[q + 1]! + a[p + 1]! * b[q]!
      }
      c[4 * row + 2 * column] = re
      c[4 * row + 2 * column + 1] = im
    }
  }
}

/** The stub up to a fault with the fault at its end. */
function withFault(near: Float64Array, fault: FaultElement, ohms: number, out: Float64Array): void {
  out.set(near)
  for (const row of [0, 4]) {
    for (const part of [0, 1]) {
      if (fault === 'across') out[row + part]! += near[row + 2 + part]! / ohms
      else if (fault === 'along') out[row + 2 + part]! += near[row + part]! * ohms
    }
  }
}

/** y[at] = p / q. */
function quotient(at: number, pRe: number, pIm: number, qRe: number, qIm: number): void {
  const square = qRe * qRe + qIm * qIm
  y[at] = (pRe * qRe + pIm * qIm) / square
  y[at + 1] = (pIm * qRe - pRe * qIm) / square
}

/** Admittances of the piece with its fault: from end to end y₁₁, y₁₂, y₂₂, S, into `y`. */
function admittances(near: Float64Array, rest: Float64Array, fault: FaultElement, ohms: number): void {
  if (fault === 'broken') {
    quotient(0, near[4]!, near[5]!, near[0]!, near[1]!)
    y[2] = 0
    y[3] = 0
    quotient(4, rest[4]!, rest[5]!, rest[6]!, rest[7]!)
    return
  }
  const first = new Float64Array(8)
  withFault(near, fault, ohms, first)
  cascade(first, rest, chain)
  const isNone = Math.abs(chain[2]!) + Math.abs(chain[3]!) < LEAST_OHM
  const [bRe, bIm] = isNone ? [LEAST_OHM, 0] : [chain[2]!, chain[3]!]
  quotient(0, chain[6]!, chain[7]!, bRe, bIm)
  quotient(2, -1, 0, bRe, bIm)
  quotient(4, chain[0]!, chain[1]!, bRe, bIm)
}

/**
 * The same as {@link throughFault} at 0 Hz from one port, Ω: nothing but resistors, and many times faster.
 */
export function ohmsThroughFault(
  { re }: Ports,
  near: Float64Array,
  rest: Float64Array,
  fault: FaultElement,
  ohms: number,
): number {
  const [a, b, c, d] = [near[0]!, near[2]!, near[4]!, near[6]!]
  const [a2, b2, c2, d2] = [rest[0]!, rest[2]!, rest[4]!, rest[6]!]
  let [y11, y12, y22] = [c / a, 0, c2 / d2]
  if (fault !== 'broken') {
    const [across, along] = [fault === 'across' ? 1 / ohms : 0, fault === 'along' ? ohms : 0]
    const [a1, c1] = [a + b * across, c + d * across]
    const [b1, d1] = [b + a * along, d + c * along]
    const through = Math.max(LEAST_OHM, a1 * b2 + b1 * d2)
    y11 = (c1 * b2 + d1 * d2) / through
    y12 = -1 / through
    y22 = (a1 * a2 + b1 * c2) / through
  }
  const [zpp, zpa, zpb, zaa, zab, zbb] = [re[0]!, re[1]!, re[2]!, re[4]!, re[5]!, re[8]!]
  const m11 = 1 + y11 * zaa + y12 * zab
  const m12 = y11 * zab + y12 * zbb
  const m21 = y12 * zaa + y22 * zab
  const m22 = 1 + y12 * zab + y22 * zbb
  const det = m11 * m22 - m12 * m21
  const w11 = (m22 * y11 - m12 * y12) / det
  const w12 = (m22 * y12 - m12 * y22) / det
  const w21 = (m11 * y12 - m21 * y11) / det
  const w22 = (m11 * y22 - m21 * y12) / det
  return zpp - (zpa * (w11 * zpa + w12 * zpb) + zpb * (w21 * zpa + w22 * zpb))
}

/**
 * Impedances between the ports of a network with a piece of line laid in that has a fault, Ω: Z − Zₑ (1 + Y Zₑₑ)⁻¹ Y Zₑ, where e are the two
 * ends of the piece and Y its admittances.
 *
 * Source: the matrix inversion lemma (J. Sherman and W. J. Morrison 1950, M. A. Woodbury 1950; from memory).
 *
 * @param seen the network without the piece, from its ports and, last, from the two ends of the piece
 * @param near chain matrix of the piece up to the fault, A, B, C, D with two parts each  @param rest of the piece beyond it
 */
export function throughFault(
  seen: Ports,
  near: Float64Array,
  rest: Float64Array,
  fault: FaultElement,
  ohms: number,
): Ports {
  admittances(near, rest, fault, ohms)
  const { size } = seen
  const ends = size - 2
  const z = (row: number, column: number) => (ends + row) * size + ends + column
  // M = 1 + Y Zₑₑ
  const m = new Float64Array(8)
  for (let row = 0; row < 2; row++) {
    for (let column = 0; column < 2; column++) {
      let [re, im] = [row === column ? 1 : 0, 0]
      for (let k = 0; k < 2; k++) {
        const at = 2 * (row + k)
        const other = z(k, column)
        re += y[at]! * seen.re[other]! - y[at + 1]! * seen.im[other]!
        im += y[at]! * seen.im[other]! + y[at + 1]! * seen.re[other]!
      }
      m[4 * row + 2 * column] = re
      m[4 * row + 2 * column + 1] = im
    }
  }
  // W = M⁻¹ Y
  const detRe = m[0]! * m[6]! - m[1]! * m[7]! - (m[2]! * m[4]! - m[3]! * m[5]!)
  const detIm = m[0]! * m[7]! + m[1]! * m[6]! - (m[2]! * m[5]! + m[3]! * m[4]!)
  const square = detRe * detRe + detIm * detIm
  const w = new Float64Array(8)
  for (let row = 0; row < 2; row++) {
    for (let column = 0; column < 2; column++) {
      // Rows of the inverse: (m₂₂, −m₁₂), (−m₂₁, m₁₁).
      const [p, q] = row === 0 ? [6, 2] : [4, 0]
      const [signP, signQ] = row === 0 ? [1, -1] : [-1, 1]
      const [a, b] = [2 * column, 2 * (1 + column)]
      const re =
        signP * (m[p]! * y[a]! - m[p + 1]! * y[a + 1]!) + signQ * (m[q]! * y[b]! - m[q + 1]! * y[b + 1]!)
      const im =
        signP * (m[p]! * y[a + 1]! + m[p + 1]! * y[a]!) + signQ * (m[q]! * y[b + 1]! + m[q + 1]! * y[b]!)
      w[4 * row + 2 * column] = (re * detRe + im * detIm) / square
      w[4 * row + 2 * column + 1] = (im * detRe - re * detIm) / square
    }
  }
  const re = new Float64Array(ends * ends)
  const im = new Float64Array(ends * ends)
  for (let p = 0; p < ends; p++) {
    for (let q = 0; q < ends; q++) {
      let [sumRe, sumIm] = [seen.re[p * size + q]!, seen.im[p * size + q]!]
      for (let i = 0; i < 2; i++) {
        for (let j = 0; j < 2; j++) {
          const [a, b, c] = [p * size + ends + i, 4 * i + 2 * j, (ends + j) * size + q]
          const tRe = seen.re[a]! * w[b]! - seen.im[a]! * w[b + 1]!
          const tIm = seen.re[a]! * w[b + 1]! + seen.im[a]! * w[b]!
          sumRe -= tRe * seen.re[c]! - tIm * seen.im[c]!
          sumIm -= tRe * seen.im[c]! + tIm * seen.re[c]!
        }
      }
      re[p * ends + q] = sumRe
      im[p * ends + q] = sumIm
    }
  }
  return { re, im, size: ends }
}
