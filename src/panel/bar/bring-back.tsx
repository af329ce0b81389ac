import { useSignal } from '@preact/signals'
import { undirected } from '../../isolated'
import type { Store } from '../../state/store'
import type { TakenIn } from '../../storage/all-kept'
import { bringBack } from '../../storage/everything'
import type { Keeper } from '../../storage/keeper'
import { formatCount } from '../../words/units'
import { CarryDialog } from '../carry/carry-dialog'
import { Tick } from '../tick'

interface Props {
  readonly store: Store
  readonly keeper: Keeper | null
}

/** All that somebody kept, from a file: what is in it, and what of it comes in. Nothing that is here is written over unasked. */
export function BringBack({ store, keeper }: Props) {
  const brought = store.broughtBack.value
  const settings = useSignal(false)
  const shelf = useSignal(false)
  const taken = useSignal<TakenIn | null>(null)
  if (!brought) return null
  const { all, name } = brought
  const close = () => {
    store.broughtBack.value = null
  }
  const take = async () => {
    if (!keeper) return
    const wanted = { settings: settings.peek(), shelf: shelf.peek() }
    taken.value = await bringBack(store, keeper, all, wanted)
  }
  const choice = (label: string, chosen: typeof settings) => (
    <Tick
      checked={chosen.value}
      onChange={(isTicked) => {
        chosen.value = isTicked
      }}
    >
      {label}
    </Tick>
  )
  const found = taken.value
  return (
    <CarryDialog title={`What is in ${undirected(name)}?`} onClose={close}>
      <p>
        {formatCount(all.plans.length, 'plan')} and {formatCount(all.versions.length, 'version')} of plans.
        They come beside those that this browser keeps: nothing is written over, and what is here already is
        not taken twice. Wires, sets and supplies of your own come too, where none of that name is here.
      </p>
      {!found && (
        <>
          {Object.keys(all.settings).length > 0 &&
            choice('The settings too, in the place of those here', settings)}
          {all.shelf !== '' && choice('The shelf too, in the place of what lies on the one here', shelf)}
        </>
      )}
      {all.maps.length > 0 && (
        <p>
          Maps that were kept there, to be opened again from their files:{' '}
          {all.maps.map(({ name: map }, i) => (
            <>
              {i > 0 && ', '}
              <bdi>{undirected(map)}</bdi>
            </>
          ))}
          .
        </p>
      )}
      {!keeper && <p role="alert">This browser keeps nothing: no plan can come in.</p>}
      {found && (
        <p role="status">
          Taken in: {formatCount(found.plans, 'plan')}, {formatCount(found.versions, 'version')}. Already
          here: {found.known}.
          {found.unreadable > 0 && ` ${found.unreadable} could not be read, and stay in the file.`} They are
          in the list under Plans.
        </p>
      )}
      <div class="acts">
        {!found && (
          <button type="button" disabled={!keeper} onClick={() => void take()}>
            Take in what is new
          </button>
        )}
        <button type="button" onClick={close}>
          {found ? 'Done' : 'Take nothing'}
        </button>
      </div>
    </CarryDialog>
  )
}
