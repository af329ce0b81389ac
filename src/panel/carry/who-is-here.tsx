import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import type { OtherHand, Sharing } from '../../share/sharing'
import { requestPlace } from '../../state/requests'
import type { Store } from '../../state/store'
import { ageWords } from '../../words/age-words'
import { thingWords } from '../../words/property-words'
import { thingOfKey } from '../../words/thing-of-key'
import { Tick } from '../tick'
import { HandMark } from './hand-mark'

/** Who else is at the plan, what each has open or changed last, and where each is who tells it. */
export function WhoIsHere({ store, sharing }: { store: Store; sharing: Sharing }) {
  const others = sharing.others.value
  const gone = sharing.spots.value.filter(({ hand }) => !others.some((each) => each.hand === hand))
  return (
    <section>
      <h2>Who is here</h2>
      {others.length + gone.length === 0 && <p>Nobody else now.</p>}
      <ul>
        {others.map((other) => (
          <Other key={other.hand} store={store} other={other} />
        ))}
        {gone.map((other) => (
          <Other key={other.hand} store={store} other={other} isGone />
        ))}
      </ul>
      {sharing.box && <OwnSpot sharing={sharing} />}
    </section>
  )
}

function Other({ store, other, isGone = false }: { store: Store; other: OtherHand; isGone?: boolean }) {
  const key = other.on || other.at
  const thing = key ? thingOfKey(store.plan.value, key) : undefined
  const { spot } = other
  const show = () => {
    if (!thing) return
    const { position, ...selection } = thing
    store.selection.value = selection
    requestPlace(position)
  }
  return (
    <li>
      <HandMark name={other.name || other.hand} /> <bdi>{other.name || 'Somebody'}</bdi>
      {isGone && ' — not heard now'}
      {!isGone && key && (
        <>
          {other.on ? ' — at ' : ' — last at '}
          {thingWords(store.plan.value, key)}{' '}
          {thing && (
            <button type="button" class="quiet" onClick={show}>
              Show it
            </button>
          )}
        </>
      )}
      {spot && (
        <>
          {' '}
          <button type="button" class="quiet" onClick={() => requestPlace(spot.position)}>
            Where they {isGone ? 'were' : 'are'}, {ageWords(Date.now() - spot.atMs)}
          </button>
        </>
      )}
    </li>
  )
}

/** Tells the others where this screen is, as long as the person lets it. */
function OwnSpot({ sharing }: { sharing: Sharing }) {
  const isOn = useSignal(false)
  const said = useSignal('')
  useEffect(() => {
    if (!isOn.value) return
    const watch = navigator.geolocation.watchPosition(
      ({ coords, timestamp }) => {
        said.value = 'The others see where you are.'
        sharing.tellSpot({
          position: [coords.longitude, coords.latitude],
          ...{ accuracyM: coords.accuracy, atMs: timestamp },
        })
      },
      () => {
        said.value = 'The system does not tell this page where you are.'
        isOn.value = false
      },
      { enableHighAccuracy: true, maximumAge: 10_000 },
    )
    return () => {
      navigator.geolocation.clearWatch(watch)
      sharing.tellSpot(null)
    }
  }, [isOn.value])
  if (!window.isSecureContext || !navigator.geolocation)
    return (
      <p class="soft">
        Where crews are is shown only on pages over https or from this very machine: browsers tell no other
        page.
      </p>
    )
  return (
    <>
      <Tick
        checked={isOn.value}
        onChange={(isTicked) => {
          isOn.value = isTicked
          said.value = ''
        }}
      >
        Show the others where I am
      </Tick>
      <p class="soft" role="status">
        {said.value}
      </p>
    </>
  )
}
