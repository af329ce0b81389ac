import { type Inputs, useEffect, useRef } from 'preact/hooks'

/** The signal of the search that is under way, which is given up when what it was asked for is no more, and when its card goes. */
export function useSearchSignal(asked: Inputs): () => AbortSignal {
  const search = useRef(new AbortController())
  useEffect(
    () => () => {
      search.current.abort()
      search.current = new AbortController()
    },
    asked,
  )
  return () => search.current.signal
}
