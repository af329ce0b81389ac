import { useSignal } from '@preact/signals'
import type { ComponentChildren } from 'preact'
import {
  isFromDisk,
  isTileAddress,
  NOT_FROM_DISK,
  SUGGESTED_SOURCES,
  sourceInUse,
  type TileSource,
  type TileUse,
  turnOffTiles,
  turnOnTiles,
} from '../state/online-tiles'
import { OnDemand } from './question'
import { TextField } from './text-field'

const WORDS: Readonly<
  Record<TileUse, { readonly title: string; readonly sees: string; readonly address: string }>
> = {
  map: {
    title: 'Map from the network',
    sees: 'While it is on, the tile server sees which area you look at, and from which network address. Your plan is not sent. With it off, nothing leaves this machine.',
    address: 'Tile address',
  },
  elevation: {
    title: 'Elevations from the network',
    sees: 'While they are on, the server sees where your plan lies, and from which network address. The plan itself is not sent. With them off, nothing leaves this machine.',
    address: 'Address of the elevation tiles (PNG, height in its colours)',
  },
}

/** Tiles from the network: off by default, and a word on what they reveal before they are turned on. */
export function TileServer({
  use,
  whileOn,
}: {
  use: TileUse
  /** What can be done with it while it is on. */
  whileOn?: (source: TileSource) => ComponentChildren
}) {
  const { title, sees, address } = WORDS[use]
  const inUse = sourceInUse(use)
  const source = inUse ?? SUGGESTED_SOURCES[use]
  const url = useSignal(source.url)
  const credit = useSignal(source.credit)
  return (
    <OnDemand title={`${title}: ${inUse ? 'on' : 'off'}`}>
      <p>{sees}</p>
      <TextField
        label={address}
        value={url.value}
        refuse={(text) =>
          isTileAddress(text) ? undefined : 'The address must begin with https:// and hold {z}, {x} and {y}.'
        }
        onCommit={(text) => {
          url.value = text
        }}
      />
      <TextField
        label="Credit that its owner asks for"
        value={credit.value}
        onCommit={(text) => {
          credit.value = text
        }}
      />
      {isFromDisk() && <p>{NOT_FROM_DISK}</p>}
      <div class="acts">
        <button
          type="button"
          disabled={isFromDisk()}
          onClick={() => turnOnTiles(use, { url: url.value, credit: credit.value })}
        >
          {inUse ? 'Use this address' : 'Turn on'}
        </button>
        {inUse && (
          <button type="button" onClick={() => turnOffTiles(use)}>
            Turn off
          </button>
        )}
      </div>
      {inUse && whileOn?.(inUse)}
    </OnDemand>
  )
}
