import { signal } from '@preact/signals'

/** The name of whoever walks: asked once, and known until the page is left. */
const walker = signal('')

/** When a record is made, and by whom where he said it. */
export function recordedNow(): { readonly at: string; readonly by?: string } {
  const by = walker.peek().trim()
  return { at: `${new Date().toISOString().slice(0, 19)}Z`, ...(by && { by }) }
}

export function WhoField() {
  return (
    <label class="who">
      Your name, for the record
      <input
        value={walker.value}
        autocomplete="off"
        onInput={({ currentTarget }) => {
          walker.value = currentTarget.value
        }}
      />
    </label>
  )
}
