import { takeElevationsOut } from '../files/carried-elevations'
import { parsePlanBytes } from '../files/parse-plan'
import { isolated } from '../isolated'
import type { Plan } from '../plan/plan'
import type { Result } from '../problem'
import type { FileStore } from './save-plan-file'
import { SMALL_BYTES } from './small-files'
import { takeElevations } from './take-elevations'

/** Opens a plan file, or takes what it brings into the shared plan that it is of. A bad one changes nothing: all its faults are listed. */
export async function openPlanFile(store: FileStore, file: File): Promise<void> {
  const plan = await readPlanFile(store, file)
  if (!plan || store.sharing?.peek()?.takeFile(plan)) return
  if (!(await store.ownJournal?.peek()?.takeFile(plan))) store.open(plan)
}

async function planHere(file: File): Promise<Result<Plan> | undefined> {
  const bytes = await file.arrayBuffer().catch(() => undefined)
  return bytes && parsePlanBytes(new Uint8Array(bytes))
}

async function planAside(file: File): Promise<Result<Plan>> {
  const { resultAside } = await import('./read-aside')
  return resultAside('plan', file)
}

/** The plan in a file; undefined where there is none, which is told. Elevations that it carries are taken in as files of their own. */
export async function readPlanFile(store: FileStore, file: File): Promise<Plan | undefined> {
  const result = await (file.size > SMALL_BYTES ? planAside(file) : planHere(file))
  if (!result) {
    store.notice.value = `${isolated(file.name)} cannot be read. Check that it is still there and that you may read it.`
    return undefined
  }
  if (!result.ok) {
    store.refusedFile.value = { name: file.name, problems: result.problems }
    return undefined
  }
  const { plan, grids } = takeElevationsOut(result.value)
  if (grids.length > 0) {
    void takeElevations(
      store,
      grids.map(({ name, text }) => new File([text], name)),
    )
    store.notice.value = `${isolated(file.name)} has brought its elevations along. They are kept in this browser, in the list under “Do we know the ground?”.`
  }
  return plan
}
