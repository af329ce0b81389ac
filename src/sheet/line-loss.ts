import { lineConstants, propagation } from '../budget/line-constants'
import type { Line } from '../plan/plan'
import type { ReportLine } from '../report/report'
import { DB_PER_NEPER } from '../units'
import type { PaperSource } from './paper-source'

/** The frequency at which the handbooks state the loss of a wire, Hz. */
const SPEECH_HZ = 1000

/**
 * Loss of a line by itself at 1 kHz, between impedances like its own, dB: α · l. What a call loses between real sets stands on the test card.
 *
 * Undefined where the wire is not in the catalog.
 */
export function lineLossDb(
  { plan, catalog }: PaperSource,
  line: Line,
  measured: ReportLine,
): number | undefined {
  const wire = catalog.wires.get(line.wire)
  if (!wire) return undefined
  const constants = lineConstants(wire, plan.weather, plan.wireTempC, line.return)
  return propagation(constants, SPEECH_HZ).gammaPerKm.re * (measured.wireM / 1000) * DB_PER_NEPER
}
