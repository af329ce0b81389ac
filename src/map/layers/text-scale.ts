/** How much larger than usual the browser is set to write: sizes in px go by it. */
export const TEXT_SCALE =
  (Number.parseFloat(
    typeof document === 'undefined' ? '' : getComputedStyle(document.documentElement).fontSize,
  ) || 16) / 16
