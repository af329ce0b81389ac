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
import { signIn } from './sign-in'

const byName = (a: OtherHand, b: OtherHand): number => a.name.localeCompare(b.name)

/** Who else is at the plan, what each has open or changed last, and where each is who tells it. */
export function WhoIsHere({ store, sharing }: { store: Store; sharing: Sharing }) {
  const others = sharing.others.value.toSorted(byName)
  const gone = sharing.spots.value.filter(({ hand }) => !others.some((each) => each.hand === hand))
  return (
    <section>
      <h2>Who is here{others.length > 1 && `: ${others.length} others`}</h2>
      {others.length + gone.length === 0 && <p>Nobody else now.</p>}
      {others.length + gone.length > 0 && (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a list that scrolls is reached by the keyboard
        <ul class="hands" tabIndex={0} aria-label="Others at the plan">
          {others.map((other) => (
            <Other key={other.hand} store={store} sharing={sharing} other={other} />
          ))}
          {gone.toSorted(byName).map((other) => (
            <Other key={other.hand} store={store} sharing={sharing} other={other} isGone />
          ))}
        </ul>
      )}
      {sharing.box && <p class="soft">Whoever only reads is not in this list.</p>}
      {sharing.box && sharing.mayWrite && <OwnSpot sharing={sharing} />}
    </section>
  )
}

interface OtherProps {
  readonly store: Store
  readonly sharing: Sharing
  readonly other: OtherHand
  readonly isGone?: boolean
}

function Other({ store, sharing, other, isGone = false }: OtherProps) {
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
      <HandMark sign={signIn(sharing, other.name)} /> <bdi>{other.name}</bdi>
      {isGone && <span class="soft">, not heard now</span>}
      {!isGone && key && (
        <span class="soft">
          {other.on ? ', has open: ' : ', changed last: '}
          {thing ? (
            <button type="button" class="quiet" onClick={show}>
              {thingWords(store.plan.value, key)}
            </button>
          ) : (
            thingWords(store.plan.value, key)
          )}
        </span>
      )}
      {spot && (
        <button type="button" class="quiet" onClick={() => requestPlace(spot.position)}>
          {isGone ? 'Was there' : 'Is there'} {ageWords(Date.now() - spot.atMs)}: show
        </button>
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
