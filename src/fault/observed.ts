import { bridgeObservations } from './bridge'
import { type Answer, type Evidence, isReading } from './evidence'
import { type Bench, type Manner, meterObservation, type Observation, type Witness } from './observation'
import { crankWitness, hearWitness, ringWitness, soundWitness } from './witness'

/** All evidence, ready to hold faults against. */
export function observed(
  bench: Bench,
  evidence: readonly Evidence[],
  manner: Manner,
): { readonly observations: readonly Observation[]; readonly witnesses: readonly Witness[] } {
  const observations: Observation[] = []
  const witnesses: Witness[] = []
  const put = <T>(list: T[], each: T | null) => void (each && list.push(each))
  const answered = (answer: Answer) =>
    'rings' in answer
      ? ringWitness(bench, answer.rings, answer.ok)
      : hearWitness(bench, answer.hears, answer.ok)
  for (const each of evidence) {
    if (isReading(each)) put(observations, meterObservation(bench, each, manner))
    else if ('murray' in each || 'varley' in each)
      observations.push(...bridgeObservations(bench, each, manner))
    else if ('sound' in each) witnesses.push(soundWitness(each.sound))
    else if ('crank' in each) put(witnesses, crankWitness(bench, each))
    else put(witnesses, answered(each))
  }
  return { observations, witnesses }
}
