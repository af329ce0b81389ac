import { abs } from '../../src/budget/complex'
import { OHM_PER_RINGER_EQUIVALENT, ringerEquivalents, ringerOhm } from '../../src/budget/ringer'
import { ringerOfEquivalents } from '../../src/catalog/ringer-equivalent'
import { builtInSet } from './built-in-entry'
import { checks } from './check'

const ringer = (id: string) => {
  const found = builtInSet(id).ringer
  if (!found) throw new Error(`${id} has no ringer`)
  return found
}
const modulus = (id: string, hz: number) => abs(ringerOhm(ringer(id), hz))

const equivalents = checks(
  {
    source: {
      work: '47 CFR 68.312 (1997) and TIA-968',
      place: 'ringing type A: at least 1400 Ω for 5 ringer equivalents at 20 Hz',
    },
    tolerancePct: 0.1,
    because: 'the network that stands for one equivalent is a rounded one',
  },
  [
    {
      what: 'five equivalents',
      sameAsCode: true,
      unit: 'Ω',
      published: 1400,
      computed: OHM_PER_RINGER_EQUIVALENT / 5,
    },
    {
      what: 'impedance of the 1-equivalent set',
      unit: 'Ω',
      published: 7000,
      computed: modulus('common-1-ren', 20),
    },
    {
      what: 'equivalents of five such sets in parallel',
      sameAsCode: true,
      unit: '',
      published: 5,
      computed: 5 * ringerEquivalents(ringer('common-1-ren'), 20),
    },
  ],
)

const network = checks(
  {
    source: {
      work: 'Encyclopaedia article on the ringer equivalence number',
      place: 'older definition: 6930 Ω and 8 µF in series',
    },
    tolerancePct: 0.1,
    because: 'the parts are rounded',
  },
  [
    {
      what: 'impedance of that network at 20 Hz',
      sameAsCode: true,
      unit: 'Ω',
      published: 7000,
      computed: abs(ringerOhm({ ohms: 6930, microF: 8, minVolts: 40 }, 20)),
    },
  ],
)

const gateway = checks(
  {
    source: { work: 'Data sheet of an analogue-port gateway', place: 'ring load' },
    tolerancePct: 1.1,
    because: 'the data sheet rounds 1386 Ω to 1400 Ω',
  },
  [
    {
      what: 'resistance of five equivalents',
      unit: 'Ω',
      published: 1400,
      computed: ringerOfEquivalents(5, 40).ohms,
    },
    {
      what: 'capacitance of five equivalents',
      sameAsCode: true,
      unit: 'µF',
      published: 40,
      computed: ringerOfEquivalents(5, 40).microF!,
    },
  ],
)

const european = checks(
  {
    source: { work: 'ETSI requirement on ringing impedance (2003), as quoted', place: 'at 25 and 50 Hz' },
    tolerancePct: 0,
    because: 'the requirement is a bound',
    bound: 'at least',
    sameAsCode: true,
  },
  [
    {
      what: 'newer European set at 25 Hz',
      unit: 'Ω',
      published: 16000,
      computed: modulus('common-european-high', 25),
    },
  ],
)

const crankRingers = checks(
  {
    source: {
      work: 'Measured impedance of bridging ringers at 20 Hz',
      place: 'from memory: middle of a range',
    },
    tolerancePct: 25,
    because: 'ranges of 2 to 3.5, 5 to 7 and 8 to 12 kΩ',
  },
  [
    { what: '1000 Ω ringer', unit: 'Ω', published: 2750, computed: modulus('crank-1000', 20) },
    { what: '1600 Ω ringer', unit: 'Ω', published: 6000, computed: modulus('crank-1600', 20) },
    { what: '2500 Ω ringer', unit: 'Ω', published: 10000, computed: modulus('crank-2500', 20) },
  ],
)

export const RINGER_CHECKS = [...equivalents, ...network, ...gateway, ...european, ...crankRingers]
