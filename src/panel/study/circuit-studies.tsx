import { useComputed } from '@preact/signals'
import { useMemo } from 'preact/hooks'
import { circuitPlots } from '../../figure/circuit-plots'
import type { CircuitId } from '../../plan/id'
import { stationName } from '../../plan/plan'
import { type CircuitStudy, studyCircuit } from '../../state/circuit-study'
import type { Store } from '../../state/store'
import { OnDemand, Question } from '../question'
import { ChoiceTable } from './choice-table'
import { EnduranceQuestion } from './endurance'
import { FaultFinder } from './fault-finder'
import { PlotView } from './plot-view'
import './study.css'

interface Props {
  readonly store: Store
  readonly id: CircuitId
}

/** The study changes when the plan settles; what is made of it is kept, so that a drag reckons none of it anew. */
const useStudy = ({ store, id }: Props) => useComputed(() => studyCircuit(store, id)).value

/** How far a circuit could go with other wire or another supply, and how loss and volts run. */
export function ReachStudies(props: Props) {
  const study = useStudy(props)
  return useMemo(
    () =>
      study && (
        <>
          <OnDemand title="What each choice would give">
            <ChoiceTable {...props} />
          </OnDemand>
          <OnDemand title="Loss against frequency, volts along the wire">
            <Plots store={props.store} study={study} />
          </OnDemand>
        </>
      ),
    [study],
  )
}

/** What is asked of a circuit once it stands: its battery, and its faults. */
export function UpkeepStudies(props: Props) {
  const study = useStudy(props)
  return useMemo(
    () =>
      study && (
        <>
          <EnduranceQuestion store={props.store} study={study} />
          <Question ask="Where is the fault?">
            <OnDemand title="Find it from what you know">
              <FaultFinder store={props.store} study={study} id={props.id} />
            </OnDemand>
          </Question>
        </>
      ),
    [study],
  )
}

function Plots({ store, study }: { store: Store; study: CircuitStudy }) {
  const { plan, model, conditions } = study
  const plots = circuitPlots(model, conditions, (id) => stationName(plan, id), store.units.value)
  if (plots.length === 0) return <p>There is nothing to draw yet: a circuit needs two sets.</p>
  return (
    <>
      {plots.map((plot) => (
        <PlotView key={plot.title} plot={plot} />
      ))}
    </>
  )
}
