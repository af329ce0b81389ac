import { bad, ok, type Result } from '../problem'
import { unzipBounded } from './bounded-unzip'

/** A plan kept in a browser: `doc` is the same through all its states and versions. */
export interface KeptText {
  readonly doc: string
  /** Title of a plan, or the name under which a version was kept. */
  readonly name: string
  readonly savedAt: string
  /** The plan file's own text. */
  readonly text: string
}

/** All that one person keeps in a browser, in one file. */
export interface Everything {
  readonly plans: readonly KeptText[]
  readonly versions: readonly KeptText[]
  /** Entries of the catalog that are kept for every plan: the text of a plan that holds nothing else; empty for none. */
  readonly entries: string
  /** What lies on the shelf, as it is kept; empty for nothing. */
  readonly shelf: string
  readonly settings: Readonly<Record<string, string>>
  /** Maps that were kept: their files are too large to go along, and are named. */
  readonly maps: readonly { readonly name: string; readonly sizeBytes: number }[]
}

const FORMAT = 'fieldpair-everything'
const INDEX = 'everything.json'
export const EVERYTHING_ENDING = '.everything.zip'
const MOST_BYTES = 200e6

/** One archive: an index, and each plan and version as a plan file of its own, so that any of them can be opened alone. */
export async function formatEverything(all: Everything): Promise<Uint8Array> {
  const { strToU8, zipSync } = await import('fflate')
  const files: Record<string, Uint8Array> = {}
  const laid = (folder: string, kept: readonly KeptText[]) =>
    kept.map(({ text, ...about }, i) => {
      const file = `${folder}/${i + 1}.plan.geojson`
      files[file] = strToU8(text)
      return { ...about, file }
    })
  const index = {
    ...{ format: FORMAT, version: 1 },
    plans: laid('plans', all.plans),
    versions: laid('versions', all.versions),
    ...{ entries: all.entries, shelf: all.shelf, settings: all.settings, maps: all.maps },
  }
  files[INDEX] = strToU8(JSON.stringify(index, null, 2))
  return zipSync(files)
}

type Members = Readonly<Record<string, unknown>>
const membersOf = (value: unknown): Members =>
  typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Members) : {}
const wordOf = (value: unknown): string => (typeof value === 'string' ? value : '')

/** Reads such an archive. Plans in it are read strictly when they are taken in; here only that the index names what lies there. */
export async function parseEverything(bytes: Uint8Array): Promise<Result<Everything>> {
  const refused = (message: string) => bad({ code: 'no-everything', at: '', message })
  const isWanted = (name: string) => name === INDEX || name.endsWith('.plan.geojson')
  const unpacked = await unzipBounded(bytes, isWanted, MOST_BYTES)
  if (!unpacked.ok) return unpacked
  const textOf = (file: string) => {
    const found = unpacked.value.get(file)
    return found && new TextDecoder().decode(found)
  }
  let index: Members
  try {
    index = membersOf(JSON.parse(textOf(INDEX) ?? ''))
  } catch {
    return refused('The archive holds no list of what is in it: it was not made by “Everything of mine”.')
  }
  if (index.format !== FORMAT || index.version !== 1)
    return refused('The archive was not made by “Everything of mine”, or by a newer version of the program.')
  const kept = (value: unknown): KeptText[] =>
    (Array.isArray(value) ? value : []).flatMap((each) => {
      const { doc, name, savedAt, file } = membersOf(each)
      const text = textOf(wordOf(file))
      return text ? [{ doc: wordOf(doc), name: wordOf(name), savedAt: wordOf(savedAt), text }] : []
    })
  return ok({
    plans: kept(index.plans),
    versions: kept(index.versions),
    entries: wordOf(index.entries),
    shelf: wordOf(index.shelf),
    settings: Object.fromEntries(
      Object.entries(membersOf(index.settings)).flatMap(([key, value]) =>
        typeof value === 'string' ? [[key, value]] : [],
      ),
    ),
    maps: (Array.isArray(index.maps) ? index.maps : []).flatMap((each) => {
      const { name, sizeBytes } = membersOf(each)
      return typeof name === 'string' ? [{ name, sizeBytes: Number(sizeBytes) || 0 }] : []
    }),
  })
}
