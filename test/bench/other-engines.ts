import { Simulation } from 'eecircuit-engine'
import { add, complex, lusolve, type Complex as MathComplex, type Matrix, matrix, zeros } from 'mathjs'
import type { ModelLine } from '../../src/budget/circuit-model'
import type { Complex } from '../../src/budget/complex'
import { lineConstants } from '../../src/budget/line-constants'
import { onHookSiemens } from '../../src/budget/ringer'
import { lineChain, piSection } from '../../src/budget/uniform-line'
import type { TelephoneSet } from '../../src/catalog/telephone-set'

/** One network to solve at one frequency: what hangs where, and what drives it. */
export interface Task {
  readonly nodeCount: number
  readonly lines: readonly ModelLine[]
  readonly onHook: readonly { readonly node: number; readonly set: TelephoneSet }[]
  readonly source: {
    readonly node: number
    readonly volts: number
    readonly ohms: number
    readonly hz: number
  }
  readonly load?: { readonly node: number; readonly ohms: number }
}

/** Gives the volts at every node. */
export type Engine = (task: Task) => Promise<readonly number[]>

/** A circuit simulator: the lines as its own lossy lines, the rest as parts. */
export async function circuitSimulator(): Promise<Engine> {
  const simulation = new Simulation()
  await simulation.start()
  return async ({ nodeCount, lines, onHook, source, load }) => {
    const netlist = [
      'a net of field wire',
      ...lines.flatMap(({ id, from, to, wire, wireM }) => [
        `.model m${id} LTRA(R=${wire.loopOhmPerKm} L=${wire.loopMilliHPerKm / 1e3} G=0 C=${wire.nanoFPerKm * 1e-9} LEN=${wireM / 1000})`,
        `O${id} n${from} 0 n${to} 0 m${id}`,
      ]),
      ...onHook.flatMap(({ node, set: { ringer } }, k) => [
        `R${k} n${node} r${k} ${ringer!.ohms}`,
        `C${k} r${k} 0 ${ringer!.microF! * 1e-6}`,
      ]),
      ...(load ? [`RL n${load.node} 0 ${load.ohms}`] : []),
      `V1 src 0 dc 0 ac ${source.volts}`,
      `RS src n${source.node} ${source.ohms}`,
      `.ac lin 1 ${source.hz} ${source.hz}`,
      '.end',
    ]
    simulation.setNetList(netlist.join('\n'))
    const result = await simulation.runSim()
    if (result.dataType !== 'complex') throw new Error(simulation.getError().join(' '))
    const volts = new Map(result.data.map(({ name, values }) => [name, values[0]!]))
    return Array.from({ length: nodeCount }, (_, node) => {
      const { real, img } = volts.get(`v(n${node})`)!
      return Math.hypot(real, img)
    })
  }
}

/** A mathematics library: one dense nodal matrix, solved by LU. */
export const denseSolve: Engine = async ({ nodeCount, lines, onHook, source, load }) => {
  const y = zeros(nodeCount, nodeCount) as Matrix<MathComplex>
  const put = (row: number, column: number, value: Complex, sign = 1) => {
    const before = complex(y.get([row, column]))
    y.set([row, column], add(before, complex(sign * value.re, sign * value.im)))
  }
  for (const { from, to, wire, wireM } of lines) {
    const pi = piSection(lineChain(lineConstants(wire, 'dry', 20), wireM / 1000, source.hz))
    put(from, from, pi.series)
    put(from, from, pi.shuntFrom)
    put(to, to, pi.series)
    put(to, to, pi.shuntTo)
    put(from, to, pi.series, -1)
    put(to, from, pi.series, -1)
  }
  for (const { node, set } of onHook) put(node, node, onHookSiemens(set, source.hz))
  put(source.node, source.node, { re: 1 / source.ohms, im: 0 })
  if (load) put(load.node, load.node, { re: 1 / load.ohms, im: 0 })
  const current = Array.from({ length: nodeCount }, (_, node) =>
    node === source.node ? source.volts / source.ohms : 0,
  )
  const volts = lusolve(y, matrix(current)) as Matrix<MathComplex>
  return current.map((_, node) => complex(volts.get([node, 0])).toPolar().r)
}
