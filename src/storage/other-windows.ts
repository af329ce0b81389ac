/** What one window tells the others of this copy of the program. */
interface OtherWindows<T> {
  readonly tell: (word: T) => void
  readonly close: () => void
}

/** The way to the other windows. Where the browser has none, nobody hears: what they do is found out at the next save. */
export function otherWindows<T>(name: string, onWord: (word: T) => void): OtherWindows<T> {
  if (typeof BroadcastChannel === 'undefined') return { tell: () => {}, close: () => {} }
  const channel = new BroadcastChannel(name)
  channel.addEventListener('message', ({ data }) => onWord(data as T))
  return { tell: (word) => channel.postMessage(word), close: () => channel.close() }
}
