import { setNote } from '../../plan/text-edits'
import type { Store } from '../../state/store'
import { CautionList } from '../caution-list'
import { Doubts } from '../doubt-list'
import { GroundQuestion } from '../ground/ground-question'
import { loadWhenShown } from '../load-when-shown'
import { Question } from '../question'
import { TextField } from '../text-field'
import { Allowances } from './allowances'
import { Carry } from './carry'
import { Conditions } from './conditions'
import { Everything } from './everything'
import { Hours } from './hours'
import { WorkDone } from './work-done'

const CatalogEditor = loadWhenShown(async () => (await import('../catalog/catalog-editor')).CatalogEditor)

/** What is asked of the whole plan once its verdicts are read: loads, hours, dangers, and what everything is reckoned with. */
export function PlanQuestions({ store }: { store: Store }) {
  return (
    <>
      <Doubts store={store} doubts={store.report.value.doubts} />
      <Everything store={store} />
      <WorkDone store={store} />
      <Carry store={store} />
      <Hours store={store} />
      <Question ask="What could hurt someone?">
        <CautionList store={store} cautions={store.report.value.cautions} />
      </Question>
      <GroundQuestion store={store} />
      <Conditions store={store} />
      <Allowances store={store} />
      <CatalogEditor store={store} />
      <Question ask="What else should be known?">
        <TextField
          label="Note"
          lines={4}
          value={store.plan.value.note}
          onCommit={(note) => store.edit((before) => setNote(before, note))}
        />
      </Question>
    </>
  )
}
