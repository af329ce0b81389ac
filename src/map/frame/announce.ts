import { isUnfinished } from '../../budget/circuit-notes'
import type { CircuitId } from '../../plan/id'
import { effect } from '../../state/steady-effect'
import { TOOL_WORDS } from '../../words/tool-words'
import type { Bench } from '../bench'

/** More changes than these at once are counted, not named. */
const MOST_NAMED = 3

/** Says what changes without a word of its own: the tool in hand, and how circuits stand. */
export function announce({ store, view, say }: Bench): { remove: () => void } {
  const live = document.createElement('div')
  live.className = 'unseen'
  live.setAttribute('role', 'status')
  view.container.parentElement?.append(live)

  let toolBefore = store.tool.peek()
  const stopTool = effect(() => {
    const tool = store.tool.value
    if (tool !== toolBefore) say(`Tool: ${TOOL_WORDS[tool]}`)
    toolBefore = tool
  })

  let documentBefore: unknown
  let before: ReadonlyMap<CircuitId, string> = new Map()
  const stopVerdicts = effect(() => {
    if (store.dragging.value) return
    const now = new Map(
      store.report.value.circuits.map(({ id, verdict, missing }) => [
        id,
        isUnfinished(missing) ? 'is not finished' : verdict === 'thin' ? 'is thin' : verdict,
      ]),
    )
    const isSame = documentBefore === store.opened.value
    const changed = [...now].filter(([id, standing]) => before.get(id) !== standing)
    documentBefore = store.opened.value
    before = now
    if (!isSame || changed.length === 0) return
    const { name } = store.tongue.value
    live.textContent =
      changed.length > MOST_NAMED
        ? `The verdicts of ${changed.length} circuits have changed.`
        : changed.map(([id, standing]) => `${name(id)} ${standing} now.`).join(' ')
  })
  return {
    remove: () => {
      stopTool()
      stopVerdicts()
      live.remove()
    },
  }
}
