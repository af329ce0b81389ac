import { recorder } from '../state/who-records'

/** Asks whoever walks for his name: each record says by whom it was made. */
export function WhoField() {
  return (
    <label class="who">
      Your name, for the record
      <input
        value={recorder.value}
        autocomplete="off"
        onInput={({ currentTarget }) => {
          recorder.value = currentTarget.value
        }}
      />
    </label>
  )
}
