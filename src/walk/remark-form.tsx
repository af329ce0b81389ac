import { useSignal } from '@preact/signals'
import { RECORD_NAMES } from '../words/record-words'
import { smallPicture } from './small-picture'

export type Remark = 'fault' | 'mended' | 'note'

interface Props {
  readonly kind: Remark
  readonly onKeep: (text: string, photo: string | null) => void
  readonly onLeave: () => void
}

/** What is seen where one stands, in words and, where that says more, a picture. */
export function RemarkForm({ kind, onKeep, onLeave }: Props) {
  const text = useSignal('')
  const photo = useSignal<string | null>(null)
  const why = useSignal('')
  const take = async (file: File | undefined) => {
    if (!file) return
    photo.value = await smallPicture(file)
    why.value = photo.value ? '' : 'The browser cannot read this picture: take another.'
  }
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault()
        onKeep(text.value.trim(), photo.value)
      }}
    >
      <label>
        {RECORD_NAMES[kind]}: what is it?
        <input
          value={text.value}
          onInput={({ currentTarget }) => {
            text.value = currentTarget.value
          }}
        />
      </label>
      <label class="button picture">
        {photo.value && <img src={photo.value} alt="What will be kept" />}
        {photo.value ? 'Another picture' : 'Add a picture'}
        <input
          class="unseen"
          type="file"
          accept="image/*"
          capture="environment"
          onChange={({ currentTarget }) => void take(currentTarget.files?.[0])}
        />
      </label>
      {why.value && <p role="alert">{why.value}</p>}
      <div class="row">
        <button type="submit" class="main">
          Keep
        </button>
        <button type="button" onClick={onLeave}>
          Leave
        </button>
      </div>
    </form>
  )
}
