import { checkText } from '../budget/verdict'
import type { Beside } from '../report/beside-report'
import type { ReportCircuit } from '../report/report'
import { batteryWords, callingSentence, endWords, worstSentence } from './outlook-words'
import { callsPerDaySentence, faintSentence, trafficSentence, trunkSentence } from './switchboard-words'
import type { Tongue } from './tongue'

/** What is reckoned beside the report for one circuit, as the contract has it: a bad day, and its odds where they were asked for. */
export function besideInWords(
  { reach, worst, switchboard }: ReportCircuit,
  { outlook, odds, trunks }: Beside,
  say: Tongue,
) {
  const { reachAlong, worstReachAlong, worstBecause } = outlook
  return {
    calling: callingSentence(outlook.calling, say),
    reach: { ...reach, along: reachAlong },
    worst: {
      ...worst,
      reach: { ...worst.reach, along: worstReachAlong },
      parts: outlook.worstAlone.map(({ check, reach: alone, along, ...part }) => ({
        ...part,
        limitedBy: check ? checkText(check) : '',
        reach: { factor: alone.factor, limitedBy: alone.check ? checkText(alone.check) : '', along },
      })),
      because: worstBecause?.parts ?? [],
      says: worstSentence(worstBecause, worst, say),
    },
    offHook: outlook.offHook,
    crowd: outlook.crowd,
    pitch: outlook.pitch,
    endurance: outlook.endurance.map((row) => ({
      what: batteryWords(row, say),
      days: row.days,
      until: endWords(row.until, say),
      atVolts: row.atVolts,
    })),
    ...(switchboard && {
      switchboard: {
        ...switchboard,
        callsPerDay: outlook.callsPerDay,
        says: [
          faintSentence(switchboard, say),
          trafficSentence(switchboard, say),
          callsPerDaySentence(outlook.callsPerDay),
        ].filter((sentence) => sentence !== ''),
      },
    }),
    ...(trunks && { trunks: trunks.map((trunk) => ({ ...trunk, says: trunkSentence(trunk, say) })) }),
    ...(odds && { odds }),
  }
}
