/** @type {readonly import('./mutants.mjs').Mutant[]} */
export const FIELD = [
  {
    fault: 'what is recovered still lies there',
    file: 'src/field/stretches.ts',
    from: 'laid = without(laid, record)',
    to: 'laid = joined(laid, record)',
    tests: ['test/field/stretches.test.ts'],
  },
  {
    fault: 'an odd reading is swallowed',
    file: 'src/field/learned.ts',
    from: 'const ODD_SIGMAS = 3',
    to: 'const ODD_SIGMAS = 300',
    tests: ['test/field/learned.test.ts'],
  },
  {
    fault: 'a meter looks to the wrong end of its line',
    file: 'src/field/probe.ts',
    from: "far: toward === 'from' ? line.from : line.to,",
    to: "far: toward === 'to' ? line.from : line.to,",
    tests: ['test/field/gauge.test.ts'],
  },
  {
    fault: 'a short is read as a joint in the wire',
    file: 'src/field/fault-ports.ts',
    from: "const [across, along] = [fault === 'across' ? 1 / ohms : 0,",
    to: "const [across, along] = [fault === 'across' ? ohms : 0,",
    tests: ['test/field/gauge.test.ts'],
  },
  {
    fault: 'a bridge counts both wires up to the fault',
    file: 'src/fault/bridge.ts',
    from: 'return { before: (past + (ohms[place.index] ?? 0) * place.part) / 2, loop }',
    to: 'return { before: past + (ohms[place.index] ?? 0) * place.part, loop }',
    tests: ['test/fault/locate.test.ts'],
  },
  {
    fault: 'the band holds half of the chance',
    file: 'src/fault/likely-stretches.ts',
    from: 'export const BAND = 0.95',
    to: 'export const BAND = 0.5',
    tests: ['test/fault/coverage.test.ts'],
  },
]
