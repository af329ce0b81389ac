import type { Carrier } from '../../src/share/carrier'
import { type PlanKeys, tagOf } from '../../src/share/plan-keys'
import { beginningIn } from '../../src/share/room'

interface Kept {
  readonly name: string
  readonly bytes: Uint8Array
}
interface Air {
  isOut: boolean
}

/** A box that keeps what comes, in its order and each name once, and can be out of reach for some. */
export function fakeBox() {
  const streams = new Map<string, Kept[]>()
  const wakes = new Set<() => void>()
  const wake = () => {
    for (const each of wakes) each()
  }
  const carrier = (air: Air): Carrier => ({
    isThere: async () => !air.isOut,
    announce: async (keys) => {
      streams.set(tagOf(keys), streams.get(tagOf(keys)) ?? [])
      return ''
    },
    lastBeginning: async (keys: PlanKeys) => {
      const stream = air.isOut ? undefined : streams.get(tagOf(keys))
      return stream?.map(({ bytes }) => beginningIn(bytes, keys)).findLast((each) => each !== undefined)
    },
    openLine: async (keys, { upTo }, events) => {
      const stream = () => streams.get(tagOf(keys)) ?? []
      let next = upTo + 1
      let isUp = false
      const look = () => {
        if (air.isOut) {
          if (isUp) events.onApart()
          isUp = false
          return
        }
        for (; next <= stream().length; next++) events.onEnvelope(stream()[next - 1]!.bytes, next, 0)
        if (!isUp) events.onCaughtUp()
        isUp = true
      }
      const wakeSoon = () => void setTimeout(look)
      wakes.add(wakeSoon)
      wakeSoon()
      const publish = async (bytes: Uint8Array) => {
        if (air.isOut) throw new Error('the box is not reached')
        const name = Buffer.from(bytes).toString('base64')
        if (!stream().some((each) => each.name === name)) stream().push({ name, bytes })
        wake()
      }
      return {
        publish,
        begin: publish,
        tellHere: () => undefined,
        close: async () => void wakes.delete(wakeSoon),
      }
    },
  })
  const put = (keys: PlanKeys, kept: Kept) => {
    streams.get(tagOf(keys))!.push(kept)
    wake()
  }
  return { carrier, wake, put }
}

/** A browser of its own: what it keeps and what its windows say to each other is heard in no other. */
export function fakeBrowser(box: ReturnType<typeof fakeBox>, name: string) {
  const ears = new Map<string, Set<Channel>>()
  class Channel {
    readonly name: string
    readonly #hear = new Set<(event: MessageEvent) => void>()
    constructor(name: string) {
      this.name = name
      ears.set(name, (ears.get(name) ?? new Set()).add(this))
    }
    addEventListener(_: 'message', hear: (event: MessageEvent) => void) {
      this.#hear.add(hear)
    }
    removeEventListener(_: 'message', hear: (event: MessageEvent) => void) {
      this.#hear.delete(hear)
    }
    postMessage(word: unknown) {
      for (const other of ears.get(this.name) ?? [])
        if (other !== this)
          queueMicrotask(() => {
            for (const hear of other.#hear) hear({ data: structuredClone(word) } as MessageEvent)
          })
    }
    close() {
      ears.get(this.name)?.delete(this)
    }
  }
  const air: Air = { isOut: false }
  return {
    over: box.carrier(air),
    /** What is done next is done in this browser. */
    enter: () =>
      Object.assign(globalThis, {
        BroadcastChannel: Channel,
        location: new URL(`http://box.test/${name}/`),
        addEventListener: () => undefined,
      }),
    goOut: (isOut: boolean) => {
      air.isOut = isOut
      box.wake()
    },
  }
}
