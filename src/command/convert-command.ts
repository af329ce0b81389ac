import { formatPlan } from '../files/format-plan'
import { parsePlanBytes } from '../files/parse-plan'
import { PLACE_FILES, type PlaceEnding, placeEndingOf, readPlaces } from '../files/places/place-files'
import { placesOfPlan } from '../files/places/places-of-plan'
import { planOfPlaces } from '../plan/add-places'
import type { Places } from '../plan/places'
import type { Plan } from '../plan/plan'
import type { Result } from '../problem'
import { answer, type CommandIo, parseArguments, Refusal, readBytes, refusalOf } from './command-io'

const USAGE =
  'usage: npm run -s convert -- IN OUT, each a .gpx, .kml, .kmz, .csv, .geojson or .plan.geojson; IN may be a .gpkg'

const PLAN = '.plan.geojson'
/** Read only. */
const GEOPACKAGE = '.gpkg'

function endingOf(path: string): PlaceEnding | typeof PLAN | typeof GEOPACKAGE {
  const ending =
    ([PLAN, GEOPACKAGE] as const).find((each) => path.toLowerCase().endsWith(each)) ?? placeEndingOf(path)
  if (!ending) throw new Refusal(`${path}: its ending is none that is known. ${USAGE}`)
  return ending
}

const titleOf = (path: string) => path.replace(/^.*[/\\]/, '').replace(/\.[a-z.]+$/i, '') || 'New plan'

/** Turns a file of places into a plan, or a plan into a file of places. Resolves to the exit code: 0, or 2 for bad input, and then nothing is written. */
export const runConvert = (args: readonly string[], io: CommandIo): Promise<number> =>
  answer(io, async () => {
    const { files } = parseArguments(args, [], USAGE)
    const [from, to, more] = files
    if (from === undefined || to === undefined || more !== undefined)
      throw new Refusal(`name two files. ${USAGE}`)
    const [inEnding, outEnding] = [endingOf(from), endingOf(to)]
    if (outEnding === GEOPACKAGE) throw new Refusal(`${to}: a GeoPackage is read, not written. ${USAGE}`)
    const bytes = await readBytes(from, io)
    const plan = inEnding === PLAN ? taken(parsePlanBytes(bytes), from) : undefined
    const places = plan
      ? placesOfPlan(plan)
      : taken(await placesIn(from, inEnding as PlaceEnding | typeof GEOPACKAGE, bytes, io), from)
    const written =
      outEnding === PLAN
        ? formatPlan(plan ?? planOfPlaces(places, titleOf(from)))
        : await PLACE_FILES[outEnding].write(
            plan ? places : throughPlan(places, from),
            plan?.title ?? titleOf(from),
          )
    await io.write(to, written).catch((error: Error) => {
      throw new Refusal(`${to}: cannot be written (${error.message}).`)
    })
    if (plan && outEnding !== PLAN && plan.circuits.size > 0)
      io.err(`${to}: holds stations and lines; wire, sets, circuits and hazards stay in the plan.\n`)
    return ''
  })

async function placesIn(
  path: string,
  ending: PlaceEnding | typeof GEOPACKAGE,
  bytes: Uint8Array,
  { sqliteWasm }: CommandIo,
): Promise<Result<Places>> {
  if (ending !== GEOPACKAGE) return readPlaces(ending, bytes)
  if (!sqliteWasm) throw new Error('nothing reads databases here')
  const [{ openSqlite }, { promptBytes }, { readGeopackage }] = await Promise.all([
    import('../files/sqlite/sqlite-file'),
    import('../files/sqlite/prompt-file'),
    import('../files/places/read-geopackage'),
  ])
  const file = await openSqlite(promptBytes(path, bytes), sqliteWasm)
  return file.ok ? readGeopackage(file.value) : file
}

/** Other files are turned into each other by way of a plan, so that what comes out is what a plan would hold. */
const throughPlan = (places: Places, from: string): Places =>
  placesOfPlan(planOfPlaces(places, titleOf(from)) as Plan)

function taken<T>(result: Result<T>, path: string): T {
  if (!result.ok) throw refusalOf(result.problems, path)
  return result.value
}
