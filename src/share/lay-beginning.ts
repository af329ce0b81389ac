import type { BoxLine } from './box-line'
import { noRoomWords } from './outbox'

/** After a try that failed the next one waits so long, ms. */
const AGAIN_MS = 1000

interface Ways {
  readonly line: () => BoxLine | null
  readonly tell: (sentence: string) => void
  readonly isOver: () => boolean
}

/** Lays a beginning down on the box for whoever comes anew, again and again until the box has it on its disk; says why where it has no room. Whether it has it. */
export async function layBeginning(bytes: Uint8Array, { line, tell, isOver }: Ways): Promise<boolean> {
  while (!isOver()) {
    try {
      await line()!.begin(bytes)
      return true
    } catch (error) {
      const why = await noRoomWords(error)
      if (why) tell(why)
      await new Promise((again) => setTimeout(again, AGAIN_MS))
    }
  }
  return false
}
