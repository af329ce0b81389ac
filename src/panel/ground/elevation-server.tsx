import { useSignal } from '@preact/signals'
import {
  isFromDisk,
  isTileAddress,
  NOT_FROM_DISK,
  SUGGESTED_SOURCES,
  sourceInUse,
  turnOffTiles,
  turnOnTiles,
} from '../../state/online-tiles'
import { OnDemand } from '../question'
import { TextField } from '../text-field'

/** Elevations from the network: off by default, and a word on what it reveals before it is turned on. */
export function ElevationServer() {
  const inUse = sourceInUse('elevation')
  const source = inUse ?? SUGGESTED_SOURCES.elevation
  const url = useSignal(source.url)
  const credit = useSignal(source.credit)
  return (
    <OnDemand title={`Elevations from the network: ${inUse ? 'on' : 'off'}`}>
      <p>
        While they are on, the server sees where your plan lies, and from which network address. The plan
        itself is not sent. With them off, nothing leaves this machine.
      </p>
      <TextField
        label="Address of the elevation tiles (PNG, height in its colours)"
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
          onClick={() => turnOnTiles('elevation', { url: url.value, credit: credit.value })}
        >
          {inUse ? 'Use this address' : 'Turn on'}
        </button>
        {inUse && (
          <button type="button" onClick={() => turnOffTiles('elevation')}>
            Turn off
          </button>
        )}
      </div>
    </OnDemand>
  )
}
