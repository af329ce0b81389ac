import {
  isFromDisk,
  isTileAddress,
  NOT_FROM_DISK,
  SUGGESTED_SOURCES,
  sourceInUse,
  turnOffTiles,
  turnOnTiles,
} from '../../state/online-tiles'
import { questionDialog } from './question-dialog'

/** Asks before anything is asked of the network, and says what that reveals. */
export function tilesDialog(): HTMLDialogElement {
  const inUse = sourceInUse('map')
  const source = inUse ?? SUGGESTED_SOURCES.map
  return questionDialog(
    'A map from the network?',
    'While it is on, the tile server sees which area you look at, and from which network address. Your plan is not sent. With it off, nothing leaves this machine.',
    [
      { label: 'Tile address', value: source.url },
      { label: 'Credit that its owner asks for', value: source.credit },
    ],
    [
      {
        words: inUse ? 'Turn off' : 'Leave it off',
        act: () => {
          if (inUse) turnOffTiles('map')
          return undefined
        },
      },
      {
        words: inUse ? 'Use this address' : 'Turn on',
        act: ([url = '', credit = '']) => {
          if (isFromDisk()) return NOT_FROM_DISK
          if (!isTileAddress(url)) return 'The address must begin with https:// and hold {z}, {x} and {y}.'
          turnOnTiles('map', { url, credit })
          return undefined
        },
      },
    ],
  )
}
