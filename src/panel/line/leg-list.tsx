import { LAYS } from '../../plan/lays'
import { noteLeg, setLays, setLegSlack } from '../../plan/leg-edits'
import { LIMITS } from '../../plan/limits'
import type { Lay, Line } from '../../plan/plan'
import type { ReportLine } from '../../report/report'
import type { Store } from '../../state/store'
import { LAY_WORDS } from '../../words/plan-words'
import { formatBearingDeg, formatCount, formatLengthM } from '../../words/units'
import { NumberField } from '../number-field'
import { SelectField } from '../select-field'
import { TextField } from '../text-field'
import { OverheadFields } from './overhead-fields'

const LAY_OPTIONS = LAYS.map((lay) => ({ value: lay, text: LAY_WORDS[lay] }))

interface Props {
  readonly store: Store
  readonly line: Line
  readonly measured: ReportLine
}

/** The legs of a line in order. Those that are picked, here or on the map, take one lay together. */
export function LegList({ store, line, measured }: Props) {
  const selection = store.selection.value
  const picked = selection?.kind === 'line' && selection.id === line.id ? selection.legs : []
  const together = picked.length > 0 ? picked : line.legs.map((_, index) => index)
  const lays = new Set(together.map((index) => line.legs[index]?.lay))
  const pick = (index: number) => {
    const legs = picked.includes(index) ? picked.filter((each) => each !== index) : [...picked, index]
    store.selection.value = { kind: 'line', id: line.id, legs }
  }

  return (
    <>
      {line.legs.length > 1 && (
        <SelectField<Lay | ''>
          label={
            picked.length > 0
              ? `How ${formatCount(picked.length, 'picked leg')} ${picked.length === 1 ? 'is' : 'are'} laid`
              : 'How all legs are laid'
          }
          value={lays.size === 1 ? [...lays][0]! : ''}
          options={[...(lays.size === 1 ? [] : [{ value: '' as const, text: 'several' }]), ...LAY_OPTIONS]}
          onCommit={(lay) => lay && store.edit((before) => setLays(before, line.id, together, lay))}
        />
      )}
      <ol class="legs">
        {line.legs.map((_, index) => (
          <li key={index} class={picked.includes(index) ? 'picked' : undefined}>
            <button
              type="button"
              aria-pressed={picked.includes(index)}
              title={`Pick leg ${index + 1}`}
              onClick={() => pick(index)}
            >
              <span class="unseen">Leg </span>
              {index + 1}
            </button>
            <LegFields store={store} line={line} measured={measured} index={index} />
          </li>
        ))}
      </ol>
    </>
  )
}

function LegFields({ store, line, measured, index }: Props & { index: number }) {
  const leg = line.legs[index]!
  const found = measured.legs[index]
  const { allowances } = store.plan.value
  const system = store.units.value
  return (
    <div class="leg">
      <span>
        {found && `${formatLengthM(found.groundM, system)} · ${formatBearingDeg(found.bearingDeg)}`}
      </span>
      <SelectField
        label={`Lay of leg ${index + 1}`}
        bare
        value={leg.lay}
        options={LAY_OPTIONS}
        onCommit={(lay) => store.edit((before) => setLays(before, line.id, [index], lay))}
      />
      <NumberField
        label="Slack"
        quantity="pct"
        system={system}
        value={leg.slackPct}
        otherwise={allowances.slackPct[leg.lay]}
        limit={LIMITS.legSlackPct}
        onCommit={(pct) => store.tryEdit((before) => setLegSlack(before, line.id, index, pct))}
        onClear={() => void store.tryEdit((before) => setLegSlack(before, line.id, index))}
      />
      {leg.lay === 'overhead' && (
        <OverheadFields store={store} line={line} measured={measured} index={index} />
      )}
      <TextField
        label="Note"
        lines={1}
        value={leg.note ?? ''}
        onCommit={(note) => store.edit((before) => noteLeg(before, line.id, index, note))}
      />
    </div>
  )
}
