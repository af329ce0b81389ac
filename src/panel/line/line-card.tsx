import { isolated } from '../../isolated'
import { addCircuit } from '../../plan/circuit-edits'
import { circuitsOfLine, sparePairs } from '../../plan/circuit-topology'
import type { LineId } from '../../plan/id'
import { LIMITS } from '../../plan/limits'
import { setPairs, setReturn, setWire, setWorn } from '../../plan/line-edits'
import { circuitName, type Line, lineName, type Over, stationName } from '../../plan/plan'
import type { ReportLine } from '../../report/report'
import { newCircuitId } from '../../state/new-id'
import { deleteLine } from '../../state/removals'
import type { Store } from '../../state/store'
import { formatCount, formatMassKg, formatOhms, formatRunM } from '../../words/units'
import { CautionList } from '../caution-list'
import { Doubts } from '../doubt-list'
import { loadWhenShown } from '../load-when-shown'
import { NumberField } from '../number-field'
import { Question } from '../question'
import { SelectField } from '../select-field'
import { LegList } from './leg-list'
import { LineCircuits } from './line-circuits'
import { LineHoursQuestion } from './line-hours'
import { RiderOffer } from './rider-offer'
import { TagList } from './tag-list'

const EntrySources = loadWhenShown(async () => (await import('../catalog/entry-sources')).EntrySources)
const LineRecord = loadWhenShown(async () => (await import('../record/line-record')).LineRecord)
const LineGround = loadWhenShown(async () => (await import('../ground/line-ground')).LineGround)
const EarthCalculator = loadWhenShown(async () => (await import('../study/earth-calculator')).EarthCalculator)

/** One line: its wire, how long it is, leg by leg how it lies, and what it costs. */
export function LineCard({ store, id }: { store: Store; id: LineId }) {
  const plan = store.plan.value
  const line = plan.lines.get(id)
  const measured = store.report.value.lines.find((each) => each.id === id)
  if (!line || !measured) return null
  const cautions = store.report.value.cautions.filter((caution) => caution.where === id)
  const doubts = store.report.value.doubts.filter((doubt) => doubt.where === id)
  const spare = sparePairs(plan, line)
  const startCircuit = (over?: Over) => {
    const circuit = newCircuitId(plan)
    const problems = store.tryEdit((before) =>
      addCircuit(before, { id: circuit, lines: [id], ...(over && { over }) }),
    )
    if (problems.length === 0) store.selection.value = { kind: 'circuit', id: circuit }
  }

  return (
    <>
      <h1>{lineName(plan, line)}</h1>
      <LineCircuits store={store} line={line} />
      <p>{lengthSentence(measured, store)}</p>
      <p>
        <button
          type="button"
          onClick={() => {
            store.walking.value = id
          }}
        >
          Walk this line
        </button>
      </p>
      <WireFields store={store} line={line} />
      <Doubts store={store} doubts={doubts} />
      <LineGround store={store} line={line} measured={measured} />
      <Question ask="How does it lie?">
        <LegList store={store} line={line} measured={measured} />
      </Question>
      <Question ask="What do we carry?">
        <p>{piecesSentence(measured, line, store)}</p>
      </Question>
      <LineRecord store={store} line={line} measured={measured} />
      <LineHoursQuestion store={store} id={id} />
      <TagList store={store} line={line} measured={measured} />
      {cautions.length > 0 && (
        <Question ask="What could hurt someone?">
          <CautionList store={store} cautions={cautions} />
        </Question>
      )}
      <Question ask="Who speaks over it?">
        {spare > 0 && (
          <p>
            {formatCount(spare, 'pair')} of {line.pairs} {spare === 1 ? 'is' : 'are'} spare.
          </p>
        )}
        <ul class="rows">
          {circuitsOfLine(plan, id).map((circuit) => (
            <li key={circuit.id}>
              <button
                type="button"
                class="quiet"
                onClick={() => {
                  store.selection.value = { kind: 'circuit', id: circuit.id }
                }}
              >
                {circuitName(plan, circuit)}
              </button>
            </li>
          ))}
        </ul>
        {spare > 0 && (
          <button type="button" onClick={() => startCircuit()}>
            Start a circuit on a spare pair
          </button>
        )}
        <RiderOffer store={store} line={line} onStart={startCircuit} />
        <button type="button" class="harm" onClick={() => deleteLine(store, id)}>
          Delete the line
        </button>
      </Question>
    </>
  )
}

function lengthSentence(line: ReportLine, store: Store): string {
  const system = store.units.value
  const where = line.legs.every((leg) => leg.onGrid) ? 'along the ground' : 'on the map'
  return `${formatRunM(line.wireM, system)} of wire for ${formatRunM(line.groundM, system)} ${where}. A meter reads ${formatOhms(line.loopOhms)} with the far end shorted.`
}

function piecesSentence(measured: ReportLine, line: Line, store: Store): string {
  const pieces = measured.pieces.length
  const { spools } = store.report.value
  if (spools.some(({ wire, isFromBefore }) => isFromBefore && wire === line.wire))
    return `${formatMassKg(measured.kg, store.units.value)} of wire; its pieces and splices follow when you let go.`
  const splices = Math.max(0, pieces - line.pairs)
  return `${formatMassKg(measured.kg, store.units.value)} of wire in ${formatCount(pieces, 'piece')}, with ${splices === 0 ? 'no splice' : formatCount(splices, 'splice')}.`
}

function WireFields({ store, line }: { store: Store; line: Line }) {
  const { plan, catalog, units } = store
  const wire = catalog.value.wires.get(line.wire)
  const [atFrom, atTo] = line.electrodeOhms ?? [0, 0]
  const electrode = (station: string, ohms: number, both: (ohms: number) => readonly [number, number]) => (
    <NumberField
      label={`Electrode at ${stationName(plan.value, station)}`}
      quantity="ohm"
      system={units.value}
      value={ohms}
      limit={LIMITS.electrodeOhms}
      onCommit={(given) => store.tryEdit((before) => setReturn(before, line.id, 'earth', both(given)))}
    />
  )
  return (
    <>
      <SelectField
        label="Wire"
        value={line.wire}
        options={store.choices.wires.value.map(({ id, name }) => ({
          value: id,
          text: isolated(name),
        }))}
        onCommit={(id) => store.edit((before) => setWire(store.withChosen(before, 'wires', id), line.id, id))}
      />
      <NumberField
        label="Pairs"
        quantity="count"
        system={units.value}
        value={line.pairs}
        limit={LIMITS.pairs}
        onCommit={(pairs) => store.tryEdit((before) => setPairs(before, line.id, pairs))}
      />
      <SelectField
        label="State of the wire"
        value={line.worn ? 'worn' : 'sound'}
        options={[
          { value: 'sound', text: 'sound' },
          { value: 'worn', text: 'old or nicked: it leaks more' },
        ]}
        onCommit={(state) => store.edit((before) => setWorn(before, line.id, state === 'worn'))}
      />
      <SelectField
        label="Return"
        value={line.return}
        options={[
          { value: 'pair', text: 'second wire of the pair' },
          { value: 'earth', text: 'earth' },
        ]}
        onCommit={(way) => void store.tryEdit((before) => setReturn(before, line.id, way))}
      />
      {line.return === 'earth' && (
        <>
          {electrode(line.from, atFrom, (ohms) => [ohms, atTo])}
          {electrode(line.to, atTo, (ohms) => [atFrom, ohms])}
          <EarthCalculator store={store} line={line} />
        </>
      )}
      {wire && <EntrySources store={store} entry={wire} />}
    </>
  )
}
