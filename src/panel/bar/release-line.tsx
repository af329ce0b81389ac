import { useSignal } from '@preact/signals'
import type { Release } from '../../state/release'
import type { Store } from '../../state/store'
import { openNewerRelease } from '../../storage/keep-release'

const OFFLINE: Readonly<Record<Release['offline'], string>> = {
  coming: 'being kept for use without a network …',
  ready: 'ready without a network',
  'not whole':
    'not kept for use without a network: not all of it has come as it was built. The next visit tries again.',
  'plain http':
    'nothing is kept for use without a network, because this address is plain http. Over https, or on the serving machine itself, it would be.',
  'one file':
    'the whole program is this one file: keep it, and it opens with no network and no server. From a file it cannot ask for online maps or elevations, nor look for a newer version. Other pages opened from this disk can read the drafts that it keeps: save your plans as files, and let nobody else’s pages be opened here.',
  'not offered': 'this browser keeps nothing here for use without a network',
}

/** Which release this is, and whether it opens without a network. */
export function ReleaseLine({ store }: { store: Store }) {
  const { name, offline, isNewerReady } = store.release.value
  const wasAsked = useSignal(false)
  return (
    <div class="soft release">
      <p>
        {name && `Version ${name}: `}
        {OFFLINE[offline]}
      </p>
      {isNewerReady && (
        <p>
          A newer version is here, whole. It opens at the next start.{' '}
          <button
            type="button"
            onClick={() => {
              wasAsked.value = true
              void openNewerRelease()
            }}
          >
            Open it now
          </button>
          {wasAsked.value && ' Close the other windows of this program first.'}
        </p>
      )}
    </div>
  )
}
