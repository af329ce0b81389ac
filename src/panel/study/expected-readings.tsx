import { wayReadings } from '../../budget/way-readings'
import { stationName } from '../../plan/plan'
import type { CircuitStudy } from '../../state/circuit-study'
import { formatOhms } from '../../words/units'
import { OnDemand } from '../question'

/** What a meter at one station should read over a line that is sound. */
export function ExpectedReadings({ study, from }: { study: CircuitStudy; from: string }) {
  const { plan, model, conditions } = study
  const rows = model.stations.flatMap((to) => {
    const readings = to === from ? null : wayReadings(model, conditions, from, to)
    return readings ? [{ to, ...readings }] : []
  })
  return (
    <OnDemand title="What the meter should read now">
      <table class="choices">
        <caption>
          From {stationName(plan, from)}, {plan.weather}, at the plan’s temperature of the wire
        </caption>
        <thead>
          <tr>
            <th scope="col">Far end</th>
            <th scope="col">Loop, shorted there</th>
            <th scope="col">Open there</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ to, loopOhm, farad }) => (
            <tr key={to}>
              <th scope="row">{stationName(plan, to)}</th>
              <td>{formatOhms(loopOhm)}</td>
              <td>{(farad * 1e9).toFixed(0)} nF</td>
            </tr>
          ))}
        </tbody>
      </table>
    </OnDemand>
  )
}
