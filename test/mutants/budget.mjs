/** @import { Mutant } from './mutants.mjs' */

/** @type {(file: string, tests: readonly string[]) => (fault: string, from: string, to: string) => Mutant} */
const inFile = (file, tests) => (fault, from, to) => ({ fault, file: `src/budget/${file}`, from, to, tests })

const constants = inFile('line-constants.ts', ['test/budget'])
const uniform = inFile('uniform-line.ts', ['test/budget'])
const network = inFile('network.ts', ['test/budget'])
const ringing = inFile('ringing.ts', ['test/budget'])
const ringer = inFile('ringer.ts', ['test/budget'])
const voice = inFile('voice-loss.ts', ['test/budget'])
const call = inFile('dc-call.ts', ['test/budget'])
const envelope = inFile('envelope.ts', ['test/budget'])
const fault = inFile('loop-tests.ts', ['test/budget'])
const rods = inFile('earth-electrode.ts', ['test/budget'])
const endurance = inFile('endurance.ts', ['test/budget'])
const verdict = inFile('verdict.ts', ['test/budget'])

/** @type {readonly Mutant[]} */
export const BUDGET = [
  constants('resistance falls with warmth', '(wireTempC - 20)', '(20 - wireTempC)'),
  constants('earth return keeps both conductors', 'warm * (byEarth ? 0.5 : 1)', 'warm * (byEarth ? 1 : 0.5)'),
  constants('millihenry taken for henry', 'wire.loopMilliHPerKm / 1000', 'wire.loopMilliHPerKm'),
  constants('wet capacitance forgotten', '(wire.wetNanoFPerKm ?? wire.nanoFPerKm)', 'wire.nanoFPerKm'),
  uniform(
    'electrodes at the wrong ends',
    'chain[0] = coshLessOneRe + cRe * fromOhm',
    'chain[0] = coshLessOneRe + cRe * toOhm',
  ),
  uniform(
    'shunt at the start of a section taken for that at its end',
    'pi[2] = dRe * yRe - dIm * yIm',
    'pi[2] = aRe * yRe - aIm * yIm',
  ),
  uniform(
    'one electrode forgotten in the series arm',
    'const bothOhm = fromOhm + toOhm',
    'const bothOhm = fromOhm',
  ),
  network(
    'a shunt passed on with the wrong sign',
    'shuntIm[neighbour[i]!]! += yRe * sIm + yIm * sRe',
    'shuntIm[neighbour[i]!]! += yRe * sIm - yIm * sRe',
  ),
  ringing('weak ringing forgotten', 'generator.volts * conditions.ringFactor', 'generator.volts'),
  ringing('a crank rings its own bell', 'generator.ownRinger && node === generator.node', 'false'),
  ringing(
    'the own bell stays bridged',
    'subtract(complex(1 / ohms), generator.ownRinger ?? ZERO)',
    'complex(1 / ohms)',
  ),
  ringer('a capacitor that adds to the coil', 'inductive - capacitive', 'inductive + capacitive'),
  ringer(
    'a capacitor that lets direct current by',
    'set.ringer.microF || set.ringer.ohms === 0 ? ZERO',
    'set.ringer.ohms === 0 ? ZERO',
  ),
  voice(
    'the better set’s limit for both',
    'Math.min(sets[i]!.set.maxLossDb, sets[j]!.set.maxLossDb)',
    'Math.max(sets[i]!.set.maxLossDb, sets[j]!.set.maxLossDb)',
  ),
  voice('power for voltage decibels', '20 * Math.log10((a.ohms', '10 * Math.log10((a.ohms'),
  voice('loss through the unit forgotten', '(portOf[i] === portOf[j] ? 0 : throughUnitDb)', '0'),
  call('milliamperes taken for amperes', 'supply.maxMA / 1000', 'supply.maxMA'),
  call('the lamp’s volts forgotten', '- (supply.indicator?.forwardVolts ?? 0)', '+ 0'),
  call('the lamp’s ohms forgotten', 'supply.ohms + (supply.indicator?.ohms ?? 0)', 'supply.ohms'),
  envelope('the worst weather rings at full strength', 'ringFactor: ENVELOPE.weakRing', 'ringFactor: 1'),
  envelope('the worst weather has a fresh battery', 'batteryFactor: battery', 'batteryFactor: 1'),
  envelope(
    'the hottest wire is the coolest',
    'Math.max(ENVELOPE.hottestWireC, today.wireTempC)',
    'Math.min(ENVELOPE.hottestWireC, today.wireTempC)',
  ),
  fault('Murray’s arms swapped', '(loopOhm * nearArm)', '(loopOhm * farArm)'),
  fault(
    'Varley’s sign',
    'faultyArm * loopOhm - goodArm * rheostatOhm',
    'faultyArm * loopOhm + goodArm * rheostatOhm',
  ),
  rods('a rod’s diameter taken for its radius', '(8 * lengthM) / diameterM', '(4 * lengthM) / diameterM'),
  endurance('idle hours are a whole day', 'idle * Math.max(0, 24 - talkHours - ringHours)', 'idle * 24'),
  verdict(
    'the best check taken for the weakest',
    'if (least && !(known < nepers)) continue',
    'if (least && !(known > nepers)) continue',
  ),
  verdict(
    'the best check taken for the weakest while a reach is sought',
    'if (figure && !(known < nepers)) return',
    'if (figure && !(known > nepers)) return',
  ),
]
