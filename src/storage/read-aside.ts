import { placesJobs } from '../jobs/places-jobs'
import type { PLACES_JOBS } from '../jobs/places-reading'
import type { AnswerOf } from '../jobs/protocol'
import { bad, type Result } from '../problem'

/** The longest text that is read, 50 million characters, has no more than three bytes for each. */
const MOST_BYTES = 150e6

type Kind = 'kind' | 'hazards' | 'plan' | 'everything'

/** Reads a file off the main thread, so that the page goes on whatever is in it. */
export async function readAside<K extends Kind>(
  kind: K,
  file: Blob,
): Promise<Result<AnswerOf<typeof PLACES_JOBS, K>>> {
  if (file.size > MOST_BYTES) {
    const [found, most] = [file.size, MOST_BYTES].map((bytes) => Math.round(bytes / 1e6).toLocaleString('en'))
    const message = `The file has ${found} MB, and ${most} MB are read at most: choose another.`
    return bad({ code: 'too-large', at: 'file', message })
  }
  const jobs = placesJobs()
  const result = await jobs.ask(kind, { file })
  jobs.dispose()
  return result ?? bad({ code: 'not-read', at: 'file', message: 'Reading the file was stopped.' })
}

/** The same where what is read is itself a result. */
export async function resultAside<K extends Exclude<Kind, 'kind'>>(
  kind: K,
  file: Blob,
): Promise<AnswerOf<typeof PLACES_JOBS, K> | Result<never>> {
  const result = await readAside(kind, file)
  return result.ok ? result.value : result
}
