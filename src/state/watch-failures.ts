import type { Signal } from '@preact/signals'
import { whyOf } from '../jobs/protocol'

/** Said by browsers of layouts that take two frames; nothing is lost. */
const HARMLESS = /^ResizeObserver loop/

/** A browser tells of a worker's death on the page as well; whoever asked the worker has its failure as an answer. */
const WORKER = /-worker[^/]*$/

/** How browsers say that a script which is loaded on demand did not come. */
const PIECE = /dynamically imported module|importing a module script failed|preload CSS/i

/** Puts every error of the page and every forgotten rejection into a signal: each once, as a sentence. Returns the undoing of itself. */
export function watchFailures(failure: Signal<string>, page: EventTarget = window): () => void {
  const told = new Set<string>()
  const tell = (error: unknown) => {
    const why = whyOf(error)
    const isStop = error instanceof DOMException && error.name === 'AbortError'
    if (isStop || HARMLESS.test(why) || told.has(why)) return
    told.add(why)
    if (PIECE.test(why)) {
      failure.value = 'A piece of the program has not arrived. The plan is kept: load the program anew.'
      return
    }
    failure.value = `Something did not work (${why.replace(/\.$/, '')}). Save the plan as a file, to be safe.`
  }
  const onError = (event: Event) => {
    const { error, message, filename } = event as ErrorEvent
    if (!WORKER.test(filename)) tell(error ?? message)
  }
  const onRejection = (event: Event) => tell((event as PromiseRejectionEvent).reason)
  page.addEventListener('error', onError)
  page.addEventListener('unhandledrejection', onRejection)
  return () => {
    page.removeEventListener('error', onError)
    page.removeEventListener('unhandledrejection', onRejection)
  }
}
