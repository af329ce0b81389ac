import { rowsOfKind } from '../../src/budget/circuit-rows'
import { checks } from './check'
import { DRY, OHMS_ONLY, plainSet, rowOfSets } from './test-circuit'

/** Loss between two sets of 600 Ω with no line between them and one more set bridged across, on hook. */
function bridgedDb(bridgeOhm: number): number {
  const talking = plainSet({ offHook: { dcOhms: 200, acOhms: 600, minMA: 0 } })
  const bridged = plainSet({ ...talking, ringer: { ohms: bridgeOhm, minVolts: 1 } })
  const model = rowOfSets([talking, bridged, talking], OHMS_ONLY, 1e-6)
  return rowsOfKind('voice', model, DRY).find(({ from, to }) => from === 's0' && to === 's2')!.lossDb
}

const bridging = checks(
  {
    source: {
      work: 'Federal Standard 1037C and MIL-STD-188: bridging loss',
      place: 'definition; the decibels from tables of bridging loss, from memory',
    },
    tolerancePct: 0.5,
    because: 'rounded to hundredths of a decibel',
  },
  [
    { what: '300 Ω across a 600 Ω line', unit: 'dB', published: 6.02, computed: bridgedDb(300) },
    {
      what: '600 Ω across a 600 Ω line (double termination)',
      unit: 'dB',
      published: 3.52,
      computed: bridgedDb(600),
    },
    { what: '1200 Ω across a 600 Ω line', unit: 'dB', published: 1.94, computed: bridgedDb(1200) },
    { what: '3000 Ω across a 600 Ω line', unit: 'dB', published: 0.83, computed: bridgedDb(3000) },
  ],
)

const negligible = checks(
  {
    source: {
      work: 'Museum page on a field telephone, after its technical manual',
      place: 'voice loss of the bridged ringer is negligible',
    },
    tolerancePct: 0,
    because: 'taken as half a decibel: hardly heard',
    bound: 'at most',
  },
  [{ what: '7000 Ω across a 600 Ω line', unit: 'dB', published: 0.5, computed: bridgedDb(7000) }],
)

export const VOICE_CHECKS = [...bridging, ...negligible]
