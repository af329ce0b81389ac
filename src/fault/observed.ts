import { meterSigma, nepersOf } from '../field/readings'
import { bridgeObservations } from './bridge'
import { earthObservation } from './earth-reading'
import { echoObservation, echoWitness } from './echo'
import { type Answer, isReading, type Known, type MeterReading } from './evidence'
import { type Bench, type Manner, meterObservation, type Observation, type Witness } from './observation'
import { strayWitness } from './stray'
import { crankWitness, hearWitness, ringWitness, soundWitness } from './witness'

/** Readings of one thing that differ by less than so many of a meter's deviations are one reading, taken so often. */
const SAME_SIGMAS = 2

/** The evidence with what was read several times read once, at the middle: the error of the meter stays the same. */
export function onceEach(evidence: readonly Known[]): readonly Known[] {
  const kept: { each: Known; values: number[] }[] = []
  for (const each of evidence) {
    const again =
      isReading(each) &&
      kept.find(({ each: other }) => {
        if (!isReading(other)) return false
        const { value, ...as } = each
        const { value: before, ...otherAs } = other
        const apart = Math.abs(nepersOf(each.what, value) - nepersOf(each.what, before))
        const isNear = apart < SAME_SIGMAS * meterSigma(each.what, value, each.meterPct)
        return isNear && JSON.stringify(as) === JSON.stringify(otherAs)
      })
    if (again) again.values.push((each as MeterReading).value)
    else kept.push({ each, values: isReading(each) ? [each.value] : [] })
  }
  return kept.map(({ each, values }) =>
    isReading(each) && values.length > 1
      ? { ...each, value: values.reduce((sum, value) => sum + value, 0) / values.length }
      : each,
  )
}

/** All evidence, ready to hold faults against. */
export function observed(
  bench: Bench,
  evidence: readonly Known[],
  manner: Manner,
): { readonly observations: readonly Observation[]; readonly witnesses: readonly Witness[] } {
  const observations: Observation[] = []
  const witnesses: Witness[] = []
  const put = <T>(list: T[], each: T | null) => void (each && list.push(each))
  const answered = (answer: Answer) =>
    'rings' in answer
      ? ringWitness(bench, answer.rings, answer.ok)
      : hearWitness(bench, answer.hears, answer.ok)
  for (const each of onceEach(evidence)) {
    if (isReading(each))
      put(observations, (each.wire ? earthObservation : meterObservation)(bench, each, manner))
    else if ('murray' in each || 'varley' in each)
      observations.push(...bridgeObservations(bench, each, manner))
    else if ('sound' in each) witnesses.push(soundWitness(each.sound))
    else if ('echo' in each) {
      put(observations, echoObservation(bench, each, manner))
      put(witnesses, echoWitness(bench, each, manner))
    } else if ('stray' in each) witnesses.push(strayWitness(bench, each))
    else if ('crank' in each) put(witnesses, crankWitness(bench, each))
    else put(witnesses, answered(each))
  }
  return { observations, witnesses }
}
