import { effect as signalEffect } from '@preact/signals'

/**
 * The effect of signals, but one that outlives a throw: the throw reaches the person as any error of the page does, and the next change
 * runs the effect again. Else one bad value would still a layer of the map until the page is loaded anew.
 */
export const effect = (run: () => unknown): (() => void) =>
  signalEffect(() => {
    try {
      const undo = run()
      return typeof undo === 'function' ? (undo as () => void) : undefined
    } catch (error) {
      reportError(error)
      return undefined
    }
  })
