import type { Complex } from './complex'
import type { Elimination } from './elimination'

/** Admittances of a network at one frequency, S: between stations (by branch) and across the pair (by node). */
export interface Admittances {
  readonly branchRe: number[]
  readonly branchIm: number[]
  readonly shuntRe: number[]
  readonly shuntIm: number[]
}

/**
 * Leak laid across one node of every network, S: 100 GΩ, far beyond any real insulation. It gives a network without any shunt
 * (dry wire at 0 Hz, every bell behind a capacitor) a potential to measure from, and moves no figure by 1e-6.
 */
const REFERENCE_LEAK_S = 1e-11

/** A plain list: a circuit asks for hundreds of short ones, and a typed array by itself costs more than all that is reckoned in it. */
const zeros = (length: number): number[] => new Array<number>(length).fill(0)

export const emptyAdmittances = ({ branchCount, nodeCount }: Elimination): Admittances => ({
  branchRe: zeros(branchCount),
  branchIm: zeros(branchCount),
  shuntRe: zeros(nodeCount),
  shuntIm: zeros(nodeCount),
})

/** Lays a π section between two nodes. @param pi its series arm and its shunts at `from` and `to`, S, each in two parts */
export function addPi(
  y: Admittances,
  branch: number,
  { from, to }: { readonly from: number; readonly to: number },
  pi: Float64Array,
): void {
  y.branchRe[branch]! += pi[0]!
  y.branchIm[branch]! += pi[1]!
  y.shuntRe[from]! += pi[2]!
  y.shuntIm[from]! += pi[3]!
  y.shuntRe[to]! += pi[4]!
  y.shuntIm[to]! += pi[5]!
}

export function addShunt(y: Admittances, node: number, value: Complex): void {
  y.shuntRe[node]! += value.re
  y.shuntIm[node]! += value.im
}

/** A network with every node taken out, ready to answer any number of injections. */
export interface Factors {
  readonly shape: Elimination
  /** 1 / (shunt + all branches) of each node when it was taken out. */
  readonly pivotRe: number[]
  readonly pivotIm: number[]
  readonly branchRe: number[]
  readonly branchIm: number[]
  /** Volts at all nodes for the current that was fed in last. */
  readonly voltsRe: number[]
  readonly voltsIm: number[]
}

/**
 * Takes out one node after the other by the star–mesh transform: branches y₁…yₘ and shunt s of the node become branches
 * yᵢyⱼ/d and shunts s·yᵢ/d, with d = s + Σ y. It only adds, so nothing cancels, however short or long the lines.
 * The admittances handed in are used up.
 *
 * Source: A. Rosen, "A new network theorem", J. IEE 62 (1924), 916 (from memory).
 */
export function factorNetwork(shape: Elimination, y: Admittances): Factors {
  const { nodeCount, order, start, neighbour, branch, mesh } = shape
  const { branchRe, branchIm, shuntRe, shuntIm } = y
  const pivotRe = zeros(nodeCount)
  const pivotIm = zeros(nodeCount)
  shuntRe[order[nodeCount - 1]!]! += REFERENCE_LEAK_S

  let meshAt = 0
  for (let k = 0; k < nodeCount; k++) {
    const node = order[k]!
    const first = start[k]!
    const end = start[k + 1]!
    let dRe = shuntRe[node]!
    let dIm = shuntIm[node]!
    for (let i = first; i < end; i++) {
      dRe += branchRe[branch[i]!]!
      dIm += branchIm[branch[i]!]!
    }
    const square = dRe * dRe + dIm * dIm
    const pRe = dRe / square
    const pIm = -dIm / square
    pivotRe[k] = pRe
    pivotIm[k] = pIm
    const sRe = shuntRe[node]! * pRe - shuntIm[node]! * pIm
    const sIm = shuntRe[node]! * pIm + shuntIm[node]! * pRe
    for (let i = first; i < end; i++) {
      const yRe = branchRe[branch[i]!]!
      const yIm = branchIm[branch[i]!]!
      shuntRe[neighbour[i]!]! += yRe * sRe - yIm * sIm
      shuntIm[neighbour[i]!]! += yRe * sIm + yIm * sRe
      const fRe = yRe * pRe - yIm * pIm
      const fIm = yRe * pIm + yIm * pRe
      for (let j = i + 1; j < end; j++) {
        const slot = mesh[meshAt++]!
        const zRe = branchRe[branch[j]!]!
        const zIm = branchIm[branch[j]!]!
        branchRe[slot]! += fRe * zRe - fIm * zIm
        branchIm[slot]! += fRe * zIm + fIm * zRe
      }
    }
  }
  return { shape, pivotRe, pivotIm, branchRe, branchIm, voltsRe: zeros(nodeCount), voltsIm: zeros(nodeCount) }
}

/** Voltages at all nodes for 1 A fed in at one: a column of the impedance matrix, Ω. They hold until the next is asked for. */
export function voltagesFrom(
  factors: Factors,
  node: number,
): { readonly re: readonly number[]; readonly im: readonly number[] } {
  const { shape, pivotRe, pivotIm, branchRe, branchIm, voltsRe: re, voltsIm: im } = factors
  const { nodeCount, order, start, neighbour, branch } = shape
  re.fill(0)
  im.fill(0)
  re[node] = 1
  // Currents move outward as nodes are taken out …
  for (let k = 0; k < nodeCount; k++) {
    const at = order[k]!
    const iRe = re[at]!
    const iIm = im[at]!
    if (iRe === 0 && iIm === 0) continue
    const vRe = iRe * pivotRe[k]! - iIm * pivotIm[k]!
    const vIm = iRe * pivotIm[k]! + iIm * pivotRe[k]!
    for (let i = start[k]!; i < start[k + 1]!; i++) {
      const yRe = branchRe[branch[i]!]!
      const yIm = branchIm[branch[i]!]!
      re[neighbour[i]!]! += vRe * yRe - vIm * yIm
      im[neighbour[i]!]! += vRe * yIm + vIm * yRe
    }
  }
  // … and voltages come back in the opposite order.
  for (let k = nodeCount - 1; k >= 0; k--) {
    const at = order[k]!
    let iRe = re[at]!
    let iIm = im[at]!
    for (let i = start[k]!; i < start[k + 1]!; i++) {
      const yRe = branchRe[branch[i]!]!
      const yIm = branchIm[branch[i]!]!
      const other = neighbour[i]!
      iRe += yRe * re[other]! - yIm * im[other]!
      iIm += yRe * im[other]! + yIm * re[other]!
    }
    re[at] = iRe * pivotRe[k]! - iIm * pivotIm[k]!
    im[at] = iRe * pivotIm[k]! + iIm * pivotRe[k]!
  }
  return { re, im }
}
