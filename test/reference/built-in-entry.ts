import { BUILT_IN } from '../../src/catalog/built-in'

const byId = <T extends { readonly id: string }>(list: readonly T[], id: string): T => {
  const found = list.find((entry) => entry.id === id)
  if (!found) throw new Error(`the catalog has no ${id}`)
  return found
}

export const builtInWire = (id: string) => byId(BUILT_IN.wires, id)
export const builtInSet = (id: string) => byId(BUILT_IN.sets, id)
export const builtInSupply = (id: string) => byId(BUILT_IN.supplies, id)
