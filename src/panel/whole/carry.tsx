import { LOAD_KINDS, type LoadKind } from '../../materials/loads'
import type { WireSpools } from '../../materials/spool-plan'
import type { WorkField as Name } from '../../plan/work'
import type { Store } from '../../state/store'
import { leftSentence } from '../../words/done-words'
import { nameIn } from '../../words/tongue'
import { formatCount, formatMassKg, formatRunM } from '../../words/units'
import { loadsSentence, loadWords, sharedWords } from '../../words/work-words'
import { FromBefore } from '../from-before'
import { OnDemand, Question } from '../question'
import { StockTable } from './stock-table'
import { WorkField } from './work-field'

const MASSES: readonly Name[] = [
  'setKg',
  'cellsPerSet',
  'cellKg',
  'supplyKg',
  'spareBatteriesPct',
  'toolsKg',
  'testSetKg',
  'tagKg',
  'rodKg',
  'lanceKg',
  'guyKg',
  'stakeKg',
  'weightKg',
  'reelPct',
]

const KIND_WORDS: Readonly<Record<LoadKind, string>> = {
  wire: 'wire',
  reel: 'reels',
  set: 'sets',
  battery: 'batteries',
  gear: 'tags and stakes',
  tools: 'tools',
}

/** The spools to take, the splices to make, what is left over, and what all of it weighs; and the stock it comes from. */
export function Carry({ store }: { store: Store }) {
  const { spools, loads, left } = store.report.value
  const system = store.units.value
  const say = store.tongue.value
  const tooHeavy = sharedWords(loads, say)
  return (
    <Question ask="What do we carry?">
      <FromBefore store={store} what="Spools, splices and loads" />
      <p>{carrySentence(spools, store)}</p>
      {left && <p>{leftSentence(left, say)}</p>}
      {loads.totalKg > 0 && (
        <>
          <p>{loadsSentence(loads, say)}</p>
          <ul class="masses">
            {LOAD_KINDS.map((kind) => (
              <li key={kind}>
                <span class="soft">{KIND_WORDS[kind]}</span> {formatMassKg(loads.kgByKind[kind], system)}
              </li>
            ))}
          </ul>
        </>
      )}
      {spools.map((wire) => (
        <WireLoad key={wire.wire} store={store} wire={wire} />
      ))}
      {loads.totalKg > 0 && (
        <>
          <WorkField store={store} field="personLimitKg" />
          {tooHeavy.length > 0 && (
            <>
              <p>Too heavy for one:</p>
              <ul class="notes">
                {tooHeavy.map((words) => (
                  <li key={words}>{words}.</li>
                ))}
              </ul>
            </>
          )}
          <OnDemand title="Everything that is carried">
            <ul class="rows">
              {loads.items.map(({ thing, count, eachKg }) => (
                <li key={JSON.stringify(thing)}>
                  <span>
                    {count} × {loadWords(thing, say)}
                  </span>
                  <span class="figure">{formatMassKg(count * eachKg, system)}</span>
                </li>
              ))}
            </ul>
          </OnDemand>
          <OnDemand title="Where the masses come from">
            {MASSES.map((field) => (
              <WorkField key={field} store={store} field={field} sourced />
            ))}
          </OnDemand>
        </>
      )}
      <StockTable store={store} />
    </Question>
  )
}

function WireLoad({ store, wire }: { store: Store; wire: WireSpools }) {
  const system = store.units.value
  return (
    <div class="load">
      <strong>{nameIn(store.plan.value, wire.wire)}</strong>
      <span>
        {wire.carry.map(({ lengthM, count }) => `${count} × ${formatRunM(lengthM, system)}`).join(', ') ||
          'no spool'}
        , {formatMassKg(wire.kg, system)}
      </span>
      <span class="soft">
        {formatRunM(wire.neededM, system)} needed with reserve, {formatCount(wire.splices, 'splice')},{' '}
        {formatRunM(wire.leftM, system)} left over on the spools used
      </span>
      {wire.missingM > 0 && (
        <span class="fails">The stock is {formatRunM(wire.missingM, system)} too short.</span>
      )}
    </div>
  )
}

function carrySentence(spools: readonly WireSpools[], store: Store): string {
  const count = spools.flatMap((wire) => wire.carry).reduce((sum, carry) => sum + carry.count, 0)
  if (count === 0) return 'No wire yet.'
  const splices = spools.reduce((sum, wire) => sum + wire.splices, 0)
  const kg = spools.reduce((sum, wire) => sum + wire.kg, 0)
  return `${formatCount(count, 'spool')}, ${formatCount(splices, 'splice')}, ${formatMassKg(kg, store.units.value)} of wire.`
}
