import { useId } from 'preact/hooks'
import { setTitle } from '../plan/text-edits'
import type { Store, Tool } from '../state/store'
import type { Keeper } from '../storage/keeper'
import { TOOL_WORDS } from '../words/tool-words'
import { PlansMenu } from './bar/plans-menu'
import { SHORTCUTS } from './bar/shortcuts'
import { ViewMenu } from './bar/view-menu'
import { useTypedText } from './field'
import './top-bar.css'

interface Props {
  readonly store: Store
  /** The plans kept in this browser; null where it keeps none. */
  readonly keeper: Keeper | null
  readonly onDemo: () => void
  readonly onPapers: () => void
}

/** The measure draws nothing: it stands on the map. */
const TOOLS = ['select', 'station', 'line', 'hazard'] as const satisfies readonly Tool[]

/** Across the top: the plan's title, the tool in hand, back and forth, plans, papers and how things are shown. */
export function TopBar({ store, keeper, onDemo, onPapers }: Props) {
  return (
    <header class="top-bar">
      <Title store={store} />
      <fieldset class="group tools" aria-label="Tool">
        {TOOLS.map((tool) => (
          <button
            key={tool}
            type="button"
            aria-pressed={store.tool.value === tool}
            title={`${TOOL_WORDS[tool]}: key ${SHORTCUTS.tools[tool]}`}
            onClick={() => {
              store.tool.value = tool
            }}
          >
            {TOOL_WORDS[tool]}
          </button>
        ))}
      </fieldset>
      <fieldset class="group history" aria-label="Undo and redo">
        <button type="button" title="Undo: Ctrl Z" disabled={!store.canUndo.value} onClick={store.undo}>
          <span aria-hidden="true" class="arrow">
            ↶
          </span>
          <span class="word">Undo</span>
        </button>
        <button type="button" title="Redo: Ctrl Shift Z" disabled={!store.canRedo.value} onClick={store.redo}>
          <span aria-hidden="true" class="arrow">
            ↷
          </span>
          <span class="word">Redo</span>
        </button>
      </fieldset>
      <div class="group menus">
        <PlansMenu store={store} keeper={keeper} onDemo={onDemo} />
        <button type="button" title="The papers that the crew walks with" onClick={onPapers}>
          Papers
        </button>
        <ViewMenu store={store} />
        <button
          type="button"
          class="help-button"
          aria-label="Help and keys"
          title="Help and keys: ?"
          onClick={() => {
            store.helpIsOpen.value = true
          }}
        >
          ?
        </button>
      </div>
    </header>
  )
}

function Title({ store }: { store: Store }) {
  const id = useId()
  const { input } = useTypedText(id, store.plan.value.title, (text) => {
    store.edit((plan) => setTitle(plan, text.trim()))
    return undefined
  })
  return (
    <input
      {...input}
      class="title"
      dir="auto"
      aria-label="Title of the plan"
      title="Title of the plan: click to change it"
      autocomplete="off"
    />
  )
}
