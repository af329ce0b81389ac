import { OVERHEAD } from '../../catalog/overhead'
import { hang } from '../../measure/catenary'
import { weightNPerM } from '../../measure/ice-and-wind'
import type { OverheadLeg } from '../../measure/overhead-spans'
import { setLegSag, setLegSpan, setLegSupport } from '../../plan/leg-edits'
import { LIMITS } from '../../plan/limits'
import type { Line } from '../../plan/plan'
import { overheadLegOf } from '../../report/overhead-leg'
import type { ReportLine } from '../../report/report'
import type { Store } from '../../state/store'
import { formatCount, formatLengthM, formatTempC, unitOf } from '../../words/units'
import { NumberField } from '../number-field'

interface Props {
  readonly store: Store
  readonly line: Line
  readonly measured: ReportLine
  readonly index: number
}

/** How one overhead leg hangs: its supports, its spans, its sag or the tension that gives it, and what comes of them. */
export function OverheadFields({ store, line, measured, index }: Props) {
  const plan = store.plan.value
  const system = store.units.value
  const leg = line.legs[index]!
  const wire = store.catalog.value.wires.get(line.wire)
  const overhead = overheadLegOf({ plan, line, legs: measured.legs, wire, ground: store.ground.value }, index)
  const first = overhead?.spans[0]
  /** The sag that a horizontal tension gives the leg's spans, by the catenary. */
  const setTension = (horizontalN: number) =>
    store.tryEdit((before) => {
      if (!first || !wire) return setLegSag(before, line.id, index)
      const { spanM } = first.hanging
      const level = hang({ spanM, weightNPerM: weightNPerM(wire), horizontalN })
      return level.ok
        ? setLegSag(before, line.id, index, Number(((level.value.sagM / spanM) * 100).toPrecision(6)))
        : level
    })

  return (
    <>
      <NumberField
        label="Sag"
        quantity="pct"
        system={system}
        value={leg.sagPct}
        otherwise={plan.allowances.sagPct}
        limit={LIMITS.legSagPct}
        onCommit={(pct) => store.tryEdit((before) => setLegSag(before, line.id, index, pct))}
        onClear={() => void store.tryEdit((before) => setLegSag(before, line.id, index))}
      />
      <NumberField
        label="Supports"
        quantity="lengthM"
        system={system}
        value={leg.supportM}
        otherwise={OVERHEAD.supportM}
        limit={LIMITS.legSupportM}
        onCommit={(m) => store.tryEdit((before) => setLegSupport(before, line.id, index, m))}
        onClear={() => void store.tryEdit((before) => setLegSupport(before, line.id, index))}
      />
      {first && (
        <NumberField
          label="Tension"
          quantity="forceN"
          system={system}
          value={first.hanging.horizontalN}
          limit={{ min: 0.1, max: Number.POSITIVE_INFINITY }}
          onCommit={setTension}
        />
      )}
      <NumberField
        label="Span"
        quantity="lengthM"
        system={system}
        value={leg.spanM}
        otherwise={OVERHEAD.spanM}
        limit={LIMITS.legSpanM}
        onCommit={(m) => store.tryEdit((before) => setLegSpan(before, line.id, index, m))}
        onClear={() => void store.tryEdit((before) => setLegSpan(before, line.id, index))}
      />
      {overhead && (
        <p class="soft hangs">
          {hangsSentence(overhead, store)} {tensionSentence(overhead, store)}
        </p>
      )}
    </>
  )
}

function hangsSentence({ spans }: OverheadLeg, store: Store): string {
  const system = store.units.value
  const low = spans.reduce((a, b) => (b.lowest.clearanceM < a.lowest.clearanceM ? b : a))
  const clear = formatTenthsM(Math.max(0, low.lowest.clearanceM), store)
  return `${formatCount(spans.length, 'span')} of ${formatLengthM(low.hanging.spanM, system)}; at ${formatTempC(OVERHEAD.hotC, system)} the lowest clears the ground by ${clear}.`
}

/** The colder, the tighter: the wire must bear the coldest day. */
function tensionSentence({ spans }: OverheadLeg, store: Store): string {
  const system = store.units.value
  const tight = spans.reduce((a, b) => (b.safetyFactor < a.safetyFactor ? b : a))
  const unit = unitOf('forceN', system)
  const pull = `${unit.fromSi(tight.coldTensionN).toFixed(0)} ${unit.sign}`
  const times = tight.safetyFactor.toFixed(1)
  const breaks = tight.safetyFactor < Infinity ? `breaks at ${times} times that` : 'its strength is not known'
  const least =
    tight.safetyFactor < OVERHEAD.safetyFactor ? ` Keep it at ${OVERHEAD.safetyFactor} or more.` : ''
  return `At ${formatTempC(OVERHEAD.coldC, system)} it pulls ${pull} and ${breaks}.${least}`
}

function formatTenthsM(m: number, store: Store): string {
  const unit = unitOf('lengthM', store.units.value)
  return `${unit.fromSi(m).toFixed(1)} ${unit.sign}`
}
