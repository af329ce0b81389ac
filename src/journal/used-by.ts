import { namesOfMember } from './keys'
import { shownValue } from './members'

type Thing = readonly [kind: string, id: string]

/** The things that the value of a register names. */
export function usedBy(kind: string, member: string, value: unknown): readonly Thing[] {
  if (value === undefined || value === null || member === '') return []
  const shown = shownValue(member, value) as never
  const [name, inner = ''] = namesOfMember(member)
  switch (kind) {
    case 'lines':
      return name === 'wire'
        ? [['wires', shown]]
        : name === 'from' || name === 'to'
          ? [['stations', shown]]
          : []
    case 'stock':
      return name === 'wire' ? [['wires', shown]] : []
    case 'circuits':
      return ofCircuit(name!, inner, shown)
    case 'field': {
      const { line, record } = shown as { readonly line: string; readonly record?: string }
      return [['lines', line], ...(record === undefined ? [] : [['field', record] as Thing])]
    }
    default:
      return []
  }
}

function ofCircuit(name: string, inner: string, shown: unknown): readonly Thing[] {
  if (name === 'lines') return [['lines', inner]]
  if (name === 'sets')
    return [
      ['stations', inner],
      ['sets', shown as string],
    ]
  if (name === 'electrodeOhms' && inner !== '') return [['stations', inner]]
  if (name !== 'supply') return []
  const { type, at } = shown as { readonly type: string; readonly at: string }
  return [
    ['supplies', type],
    ['stations', at],
  ]
}
