import { useSignal } from '@preact/signals'
import type { Keeper } from '../../storage/keeper'
import type { VersionEntry } from '../../storage/kept-records'
import { formatCount } from '../../words/units'
import { OnDemand } from '../question'
import { TextField } from '../text-field'
import { closeMenuOf } from './menu'
import { whenKept } from './when-kept'

interface Props {
  readonly keeper: Keeper
  readonly versions: readonly VersionEntry[]
  readonly act: (work: Promise<unknown>) => void
}

/** States of the plan on the table that were kept under a name, to be brought back. Undo leads back from there. */
export function KeptVersions({ keeper, versions, act }: Props) {
  const name = useSignal('')
  const count = versions.length > 0 ? formatCount(versions.length, 'version') : 'Versions'
  return (
    <OnDemand title={`${count} of this plan`}>
      <TextField
        label="Name of the version"
        value={name.value}
        onCommit={(text) => {
          name.value = text
        }}
      />
      <div class="acts">
        <button
          type="button"
          onClick={() => {
            act(keeper.keepVersion(name.value || whenKept(new Date())))
            name.value = ''
          }}
        >
          Keep the plan as it is now
        </button>
      </div>
      <ul class="rows">
        {versions.map((version) => (
          <VersionRow key={version.id} version={version} keeper={keeper} act={act} />
        ))}
      </ul>
    </OnDemand>
  )
}

function VersionRow({ version, keeper, act }: Omit<Props, 'versions'> & { readonly version: VersionEntry }) {
  /** What puts a version back that was just removed: its row stays for as long as the menu is open. */
  const putBack = useSignal<(() => Promise<void>) | null>(null)
  if (putBack.value)
    return (
      <li>
        <button
          type="button"
          class="quiet"
          onClick={() => {
            void putBack.value?.()
            putBack.value = null
          }}
        >
          Undo: keep {version.name}
        </button>
        <span class="soft">removed</span>
      </li>
    )
  return (
    <li>
      <button
        type="button"
        class="quiet"
        aria-label={`Bring back ${version.name}`}
        onClick={(event) => {
          closeMenuOf(event.currentTarget)
          act(keeper.bringBackVersion(version))
        }}
      >
        <bdi>{version.name}</bdi>
        <span class="soft"> {whenKept(version.keptAt)}</span>
      </button>
      <button
        type="button"
        aria-label={`Remove the version ${version.name}`}
        onClick={async () => {
          putBack.value = await keeper.removeVersion(version.id)
        }}
      >
        Remove
      </button>
    </li>
  )
}
