import { type HandSign, signOfHand } from '../../figure/hand-sign'
import type { Sharing } from '../../share/sharing'

/** The sign of whoever is told as `who`: one's own goes by one's own name. */
export function signIn(sharing: Partial<Pick<Sharing, 'names' | 'name'>>, who: string): HandSign {
  const name = who === 'You' ? sharing.name?.value || who : who
  return signOfHand(sharing.names?.() ?? [], name)
}
