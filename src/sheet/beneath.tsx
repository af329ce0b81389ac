import { type ReadonlySignal, type Signal, signal } from '@preact/signals'
import { createContext } from 'preact'
import { useContext } from 'preact/hooks'
import type { Box } from '../figure/geometry'
import type { Store } from '../state/store'
import type { Extent } from '../terrain/elevation-grid'

/** Dots of a map beneath, to the mm: 150 to the inch, as much as grey under ink needs. */
const DOTS_PER_MM = 6

/** The maps beneath the net as the papers carry them: in grey, where a person wants them. */
export interface Beneath {
  readonly isWanted: Signal<boolean>
  /** Pictures that are still being made: nothing is printed before they are there. */
  readonly pending: ReadonlySignal<number>
  /** Address of the picture of a stretch of ground; empty while there is none. */
  readonly pictureOf: (extent: Extent, box: Box) => ReadonlySignal<string>
  /** Lets go of all pictures. */
  readonly end: () => void
}

export const MapsBeneath = createContext<Beneath | null>(null)

export function beneathOf(store: Store): Beneath {
  const pending = signal(0)
  const made = new Map<string, Signal<string>>()
  const make = async (address: Signal<string>, extent: Extent, { left, right, top, bottom }: Box) => {
    pending.value++
    const dots = (mm: number) => Math.max(1, Math.round(mm * DOTS_PER_MM))
    const picture = await store.mapsKeeper.peek()?.strip(extent, dots(right - left), dots(bottom - top))
    if (picture) address.value = URL.createObjectURL(picture)
    pending.value--
  }
  return {
    isWanted: signal(false),
    pending,
    pictureOf: (extent, box) => {
      const key = JSON.stringify([extent, box])
      const known = made.get(key)
      if (known) return known
      const address = signal('')
      made.set(key, address)
      void make(address, extent, box)
      return address
    },
    end: () => {
      for (const { value } of made.values()) if (value) URL.revokeObjectURL(value)
    },
  }
}

/** The ground of a map on paper, under all that is drawn on it. */
export function GroundPicture({ extent, box }: { extent: Extent; box: Box }) {
  const beneath = useContext(MapsBeneath)
  if (!beneath?.isWanted.value) return null
  const href = beneath.pictureOf(extent, box).value
  if (!href) return null
  const { left, right, top, bottom } = box
  return (
    <image
      class="beneath"
      {...{ href, x: left, y: top, width: right - left, height: bottom - top }}
      preserveAspectRatio="none"
    />
  )
}
