import { Simulation } from 'eecircuit-engine'
import { expect } from 'vitest'

/** It gives no memory back: after so many circuits another takes its place. */
const MOST_RUNS = 1500

async function started(): Promise<Simulation> {
  const simulation = new Simulation()
  await simulation.start()
  return simulation
}

let shared: Promise<Simulation> | undefined
let runs = 0

/** The circuit simulator, one for all files that a process tries: ngspice, as the package eecircuit-engine carries it. */
export async function simulator() {
  shared ??= started()
  await shared
  /** Volts at some nodes: rms phasor lengths at a frequency, or direct volts at 0 Hz. */
  return async (
    cards: readonly string[],
    nodes: readonly string[],
    hz: number,
  ): Promise<readonly number[]> => {
    if (runs++ >= MOST_RUNS) {
      shared = started()
      runs = 0
    }
    const simulation = await shared!
    const analysis = hz === 0 ? '.op' : `.ac lin 1 ${hz} ${hz}`
    simulation.setNetList(['random circuit', ...cards, analysis, '.end'].join('\n'))
    const result = await simulation.runSim()
    // How it went about it is no fault: where a first try gives no answer it steps up to one.
    const faults = simulation
      .getError()
      .filter((line) => !/^(Note:|Warning: singular matrix|\s*$)/.test(line))
    expect(faults).toEqual([])
    return nodes.map((node) => {
      const name = `v(${node})`
      if (result.dataType !== 'complex') return result.data.find((column) => column.name === name)!.values[0]!
      const value = result.data.find((column) => column.name === name)!.values[0]!
      return Math.hypot(value.real, value.img)
    })
  }
}
