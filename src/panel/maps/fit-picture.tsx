import './maps.css'
import { useSignal } from '@preact/signals'
import { useEffect, useMemo } from 'preact/hooks'
import { type FitKind, fitPicture, LEAST_MARKS, type MapFit, type Mark, residualsM } from '../../geo/map-fit'
import { undirected } from '../../isolated'
import type { Fitting } from '../../state/maps-state'
import type { Store } from '../../state/store'
import { formatCount, formatLengthM } from '../../words/units'
import { CarryDialog } from '../carry/carry-dialog'
import { SelectField } from '../select-field'
import { FitMarks } from './fit-marks'
import { FitView } from './fit-view'
import type { HalfMark } from './half-mark'

const KINDS: readonly { readonly kind: FitKind; readonly words: string }[] = [
  { kind: 'affine', words: 'a sheet that lay flat' },
  { kind: 'projective', words: 'a photograph taken at a slant' },
  { kind: 'second-order', words: 'folded or stretched paper' },
]

/** Lays a photograph or scan of a map on the ground: each mark is a place that is seen on it and known on the ground. */
export function FitPicture({ store, fitting }: { store: Store; fitting: Fitting }) {
  const marks = useSignal<readonly HalfMark[]>(fitting.marks)
  const picked = useSignal(fitting.marks.length > 0 ? 0 : -1)
  const chosen = useSignal<FitKind | null>(null)
  const whole = useMemo(
    () => marks.value.flatMap((mark) => (mark.position ? [{ ...mark, position: mark.position }] : [])),
    [marks.value],
  )
  const kind = chosen.value ?? 'affine'
  const fit = useMemo(() => fitPicture(kind, whole), [kind, whole])
  const missed = fit ? residualsM(fit, whole) : []
  useEffect(
    () => () => {
      store.placeWanted.value = null
    },
    [],
  )
  const close = () => {
    store.fitting.value = null
  }
  const put = (index: number, change: Partial<HalfMark>) => {
    marks.value = marks.value.map((mark, i) => (i === index ? { ...mark, ...change } : mark))
  }
  const add = (x: number, y: number) => {
    marks.value = [...marks.value, { x, y, position: undefined }]
    picked.value = marks.value.length - 1
  }
  return (
    <CarryDialog title={`Lay ${undirected(fitting.name)} on the ground`} onClose={close} letsMapShow isBeside>
      <p>
        Press a place on the picture that you know: a crossing of its grid, a bridge, a summit. Then say where
        it lies. Three marks far apart are enough; each more shows how well all fit.
      </p>
      <FitView
        picture={fitting.picture}
        marks={marks.value}
        picked={picked.value}
        onAdd={add}
        onMove={(index, x, y) => put(index, { x, y })}
        onPick={(index) => {
          picked.value = index
        }}
      />
      <FitMarks
        store={store}
        marks={marks.value}
        missedM={missedOf(marks.value, missed)}
        picked={picked.value}
        onPick={(index) => {
          picked.value = index
        }}
        onPlace={(index, position) => put(index, { position })}
        onRemove={(index) => {
          marks.value = marks.value.filter((_, i) => i !== index)
          picked.value = Math.min(index, marks.value.length - 1)
        }}
      />
      <SelectField
        label="The picture is of"
        value={kind}
        options={KINDS.map((each) => ({
          value: each.kind,
          text: `${each.words} (${LEAST_MARKS[each.kind]} marks or more)`,
          isBarred: whole.length < LEAST_MARKS[each.kind],
        }))}
        onCommit={(value) => {
          chosen.value = value
        }}
      />
      <p role="status">{verdict(store, kind, whole, fit, missed)}</p>
      <div class="acts">
        <button
          type="button"
          disabled={!fit}
          onClick={() => fit && void store.mapsKeeper.peek()?.fitted({ ...fitting, marks: whole }, fit)}
        >
          Lay it there
        </button>
        <button type="button" onClick={close}>
          Cancel
        </button>
      </div>
    </CarryDialog>
  )
}

/** What each mark misses, m; undefined where it has no place yet, or nothing is fitted. */
function missedOf(marks: readonly HalfMark[], missed: readonly number[]): readonly (number | undefined)[] {
  let i = 0
  return marks.map(({ position }) => (position ? missed[i++] : undefined))
}

function verdict(
  store: Store,
  kind: FitKind,
  marks: readonly Mark[],
  fit: MapFit | undefined,
  missedM: readonly number[],
): string {
  const wanting = LEAST_MARKS[kind] - marks.length
  if (wanting > 0) return `${formatCount(wanting, 'mark')} more, with their places, and it can be laid.`
  if (!fit) return 'These marks lie on one line: take one far beside it.'
  if (wanting === 0) return 'That many marks are always met. One more shows how good the fit is.'
  const metres = (lengthM: number) => formatLengthM(lengthM, store.units.value)
  const meanM = Math.sqrt(missedM.reduce((sum, each) => sum + each * each, 0) / missedM.length)
  return `The marks miss their places by ${metres(meanM)} in the mean (root of the mean square), the worst by ${metres(Math.max(...missedM))}.`
}
