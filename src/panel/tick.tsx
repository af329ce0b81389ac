import type { ComponentChildren } from 'preact'

/** A box to tick, with its words. */
export const Tick = ({
  checked,
  onChange,
  children,
}: {
  checked: boolean
  onChange: (isTicked: boolean) => void
  children: ComponentChildren
}) => (
  <label class="tick">
    <input
      type="checkbox"
      checked={checked}
      onChange={({ currentTarget }) => onChange(currentTarget.checked)}
    />
    {children}
  </label>
)
