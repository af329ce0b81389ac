import { useSignal } from '@preact/signals'
import type { Keeper } from '../../storage/keeper'
import type { VersionEntry } from '../../storage/versions'
import { TextField } from '../text-field'
import { closeMenuOf } from './menu'
import { whenKept } from './when-kept'

interface Props {
  readonly keeper: Keeper
  readonly versions: readonly VersionEntry[]
  readonly act: (work: Promise<void>) => void
}

/** States of the plan on the table that were kept under a name, to be brought back. Undo leads back from there. */
export function KeptVersions({ keeper, versions, act }: Props) {
  const name = useSignal('')
  return (
    <>
      <h2>Versions of this plan</h2>
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
          <li key={version.id}>
            <button
              type="button"
              class="quiet"
              aria-label={`Bring back ${version.name}`}
              onClick={(event) => {
                closeMenuOf(event.currentTarget)
                act(keeper.bringBackVersion(version))
              }}
            >
              {version.name}
              <span class="soft"> {whenKept(version.keptAt)}</span>
            </button>
            <button
              type="button"
              aria-label={`Remove the version ${version.name}`}
              onClick={() => act(keeper.removeVersion(version.id))}
            >
              Remove
            </button>
          </li>
        ))}
      </ul>
    </>
  )
}
