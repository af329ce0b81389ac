import type { RefObject } from 'preact'
import { useLayoutEffect } from 'preact/hooks'

const PX_PER_MM = 96 / 25.4

/** A sheet that is wider than the screen is shown smaller, whole in its width. */
export function useSheetsOneWide(sheets: RefObject<HTMLElement | null>, widthMm: number) {
  useLayoutEffect(() => {
    const element = sheets.current
    if (!element) return undefined
    const resize = () => {
      const { paddingLeft, paddingRight } = getComputedStyle(element)
      const roomPx = element.clientWidth - Number.parseFloat(paddingLeft) - Number.parseFloat(paddingRight)
      element.style.setProperty('--sheet-zoom', Math.min(1, roomPx / (widthMm * PX_PER_MM)).toFixed(3))
    }
    const watch = new ResizeObserver(resize)
    watch.observe(element)
    resize()
    return () => watch.disconnect()
  }, [widthMm])
}

/** Brings a sheet to the top, and the keyboard to what scrolls. */
export function showSheet(sheets: HTMLElement | null, n: number) {
  sheets?.querySelectorAll('.sheet')[n]?.scrollIntoView({ block: 'start' })
  sheets?.focus({ preventScroll: true })
}
