import type { Store } from '../../state/store'
import type { Keeper } from '../../storage/keeper'
import { loadWhenShown } from '../load-when-shown'

const HandOn = loadWhenShown(async () => (await import('./hand-on')).HandOn)
const TakeIn = loadWhenShown(async () => (await import('./take-in')).TakeIn)
const Together = loadWhenShown(async () => (await import('./together')).Together)
const TogetherStrip = loadWhenShown(async () => (await import('./together-strip')).TogetherStrip)
const ImportPlaces = loadWhenShown(async () => (await import('./import-places')).ImportPlaces)
const BringBack = loadWhenShown(async () => (await import('../bar/bring-back')).BringBack)
const ReceivedThings = loadWhenShown(async () => (await import('./received-plan')).ReceivedThings)
const MapsDialog = loadWhenShown(async () => (await import('../maps/maps-dialog')).MapsDialog)
const FitPicture = loadWhenShown(async () => (await import('../maps/fit-picture')).FitPicture)

interface Props {
  readonly store: Store
  readonly keeper: Keeper | null
}

/** Whatever lies over the map now and then: a plan that goes out, comes in, or is changed with others; maps of one's own. */
export function CarryLayer({ store, keeper }: Props) {
  const { carrying, received, sharing } = store
  return (
    <>
      {store.importedPlaces.value && <ImportPlaces store={store} />}
      {carrying.value === 'out' && <HandOn store={store} keeper={keeper} />}
      {carrying.value === 'in' && <TakeIn store={store} />}
      {carrying.value === 'together' && <Together store={store} />}
      {sharing.value && <TogetherStrip store={store} sharing={sharing.value} />}
      {store.broughtBack.value && <BringBack store={store} keeper={keeper} />}
      {store.mapsAreOpen.value && !store.fitting.value && <MapsDialog store={store} />}
      {store.fitting.value && <FitPicture store={store} fitting={store.fitting.value} />}
      {received.value && <ReceivedThings store={store} keeper={keeper} received={received.value} />}
    </>
  )
}
