import {
  EVERYTHING_ENDING,
  type Everything,
  formatEverything,
  parseEverything,
} from '../files/everything-file'
import { parsePlan } from '../files/parse-plan'
import type { Plan } from '../plan/plan'
import type { Problem } from '../problem'
import type { TakenIn } from './all-kept'
import type { EntriesStore } from './keep-entries'
import { textOfEntries } from './keep-entries'
import { keptShelfText, takeShelfText } from './keep-shelf'
import { resultAside } from './read-aside'
import { download } from './save-plan-file'
import { type SettingsStore, settingsOf, takeSettings } from './settings'
import { SMALL_PACKED_BYTES } from './small-files'

interface AllStore extends SettingsStore, EntriesStore {
  readonly maps: {
    peek(): readonly { readonly name: string; readonly sizeBytes: number; readonly isKept: boolean }[]
  }
  readonly notice: { value: string }
  readonly broughtBack: { value: { readonly name: string; readonly all: Everything } | null }
  readonly refusedFile: { value: { readonly name: string; readonly problems: readonly Problem[] } | null }
}

/** Who keeps plans and versions. */
interface AllKeeper {
  readonly allKept: () => Promise<Pick<Everything, 'plans' | 'versions'>>
  readonly takeIn: (all: Pick<Everything, 'plans' | 'versions'>) => Promise<TakenIn>
}

const pad = (n: number) => String(n).padStart(2, '0')

/** Puts all that this browser keeps of a person's among the downloads, as one file. */
export async function saveEverything(store: AllStore, keeper: AllKeeper): Promise<void> {
  const { plans, versions } = await keeper.allKept()
  const maps = store.maps
    .peek()
    .filter(({ isKept }) => isKept)
    .map(({ name, sizeBytes }) => ({ name, sizeBytes }))
  const entries = textOfEntries(store.keptEntries.peek())
  const settings = settingsOf(store)
  const all = { plans, versions, entries, shelf: keptShelfText() ?? '', settings, maps }
  const now = new Date()
  const date = `${now.getFullYear()}-${pad(now.getMonth() + 1)}-${pad(now.getDate())}`
  download(`fieldpair-${date}${EVERYTHING_ENDING}`, await formatEverything(all), 'application/zip')
  if (maps.length > 0)
    store.notice.value = `Maps and elevation files do not go along: they are too large. The file names the ${maps.length === 1 ? 'map' : `${maps.length} maps`} that you keep.`
}

/** Reads such a file, and asks what of it is to come in. */
export async function openEverything(
  store: Pick<AllStore, 'broughtBack' | 'refusedFile'>,
  file: File,
): Promise<void> {
  const result = await (file.size > SMALL_PACKED_BYTES
    ? resultAside('everything', file)
    : parseEverything(new Uint8Array(await file.arrayBuffer())))
  if (result.ok) store.broughtBack.value = { name: file.name, all: result.value }
  else store.refusedFile.value = { name: file.name, problems: result.problems }
}

/** What of a file a person wants to have besides plans and versions: these would take the place of what is here. */
interface Wanted {
  readonly settings: boolean
  readonly shelf: boolean
}

/** Takes in what is new. Entries that are here stay as they are; settings and shelf come only when they are asked for. */
export async function bringBack(
  store: SettingsStore & EntriesStore,
  keeper: AllKeeper,
  all: Everything,
  wanted: Wanted,
): Promise<TakenIn> {
  const taken = await keeper.takeIn(all)
  const plan = all.entries ? parsePlan(all.entries) : undefined
  if (plan?.ok) store.keptEntries.value = withNew(store.keptEntries.peek(), plan.value.catalog)
  if (wanted.settings) takeSettings(store, all.settings)
  if (wanted.shelf) takeShelfText(all.shelf)
  return taken
}

function withNew(here: Plan['catalog'], more: Plan['catalog']): Plan['catalog'] {
  const united = <T extends { readonly id: string }>(own: readonly T[], theirs: readonly T[]) => [
    ...own,
    ...theirs.filter(({ id }) => !own.some((each) => each.id === id)),
  ]
  return {
    ...here,
    wires: united(here.wires, more.wires),
    sets: united(here.sets, more.sets),
    supplies: united(here.supplies, more.supplies),
  }
}
