import { type Line, lineNumber } from '../../plan/plan'
import type { ReportLine } from '../../report/report'
import { requestPlace } from '../../state/requests'
import type { Store } from '../../state/store'
import { tagReasons } from '../../words/tag-words'
import { formatCount, formatLengthM } from '../../words/units'
import { OnDemand, Question } from '../question'
import { WorkField } from '../whole/work-field'

interface Props {
  readonly store: Store
  readonly line: Line
  readonly measured: ReportLine
}

/** The tags of a line with their running distance: where they hang, why, and which of them are test points. */
export function TagList({ store, line, measured }: Props) {
  const number = lineNumber(store.plan.value, line.id)
  const tests = measured.tags.filter(({ isTestPoint }) => isTestPoint).length
  return (
    <Question ask="Where do the tags hang?">
      <p>
        {formatCount(measured.tags.length, 'tag')}, {formatCount(tests, 'test point')} among them. This is
        line {number}.
      </p>
      <OnDemand title="Tag by tag, by running distance">
        <ol class="tag-list">
          {measured.tags.map((tag) => (
            <li key={tag.number}>
              <button
                type="button"
                class="quiet"
                title="Show it on the map"
                onClick={() => requestPlace(tag.position)}
              >
                {number}/{tag.number}
              </button>
              <span>
                {tagReasons(tag.reasons, store.tongue.value)}
                {tag.isTestPoint && !tag.reasons.some(({ code }) => code === 'test-point') && (
                  <span class="soft"> · test point</span>
                )}
              </span>
              <span class="figure">{formatLengthM(tag.groundM, store.units.value)}</span>
            </li>
          ))}
        </ol>
        <WorkField store={store} field="testEveryM" sourced />
        <WorkField store={store} field="tagEveryM" />
      </OnDemand>
    </Question>
  )
}
