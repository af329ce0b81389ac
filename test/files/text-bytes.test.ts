import { expect, test } from 'vitest'
import { parsePlanBytes } from '../../src/files/parse-plan'
import { textOf } from '../../src/files/text-bytes'
import { QUARRY_TEXT, quarryNet } from './quarry-net'

/** The same text in UTF-16 with its mark. */
function utf16(text: string, little: boolean): Uint8Array {
  const bytes = new Uint8Array(2 + 2 * text.length)
  const view = new DataView(bytes.buffer)
  view.setUint16(0, 0xfeff, little)
  for (let i = 0; i < text.length; i++) view.setUint16(2 + 2 * i, text.charCodeAt(i), little)
  return bytes
}

const latin1 = (text: string) => Uint8Array.from(text, (char) => char.charCodeAt(0))

test('UTF-8 is read, with a mark and without', () => {
  const plain = new TextEncoder().encode(QUARRY_TEXT)
  expect(parsePlanBytes(plain)).toEqual({ ok: true, value: quarryNet() })
  expect(parsePlanBytes(new Uint8Array([0xef, 0xbb, 0xbf, ...plain]))).toEqual({
    ok: true,
    value: quarryNet(),
  })
})

test('UTF-16 is read by its mark, and refused without one', () => {
  for (const little of [true, false]) {
    const bytes = utf16(QUARRY_TEXT, little)
    expect(parsePlanBytes(bytes)).toEqual({ ok: true, value: quarryNet() })
    expect(textOf(bytes.slice(2))).toMatchObject({ ok: false, problems: [{ code: 'not-utf-8' }] })
  }
})

test('Latin-1 is refused with the line of its first strange letter, and what to do', () => {
  const result = parsePlanBytes(latin1('{\n  "title": "caf\u00e9"\n}'))
  expect(result).toMatchObject({ ok: false, problems: [{ code: 'not-utf-8', at: 'line 2' }] })
  expect(result.ok ? '' : result.problems[0]!.message).toContain('save it as UTF-8')
})

test('half a character at the end is refused', () => {
  expect(textOf(new Uint8Array([0x7b, 0xe2, 0x82])).ok).toBe(false)
  expect(textOf(new Uint8Array([0xff, 0xfe, 0x7b])).ok).toBe(false)
})
