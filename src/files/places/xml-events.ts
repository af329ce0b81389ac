import { type SaxesAttributePlain, SaxesParser } from 'saxes'
import { ok, type Result } from '../../problem'
import { refused } from './places'

/** What a reader of XML hears, element by element. Names come without their prefix. */
export interface XmlListener {
  readonly open: (name: string, attribute: (name: string) => string | undefined) => void
  /** @param text all the text inside the element, its children's left out */
  readonly close: (name: string, text: string) => void
  /** Asked now and then: whether to stop. */
  readonly isDone: () => boolean
}

/** Elements inside one another, at most: no file of places nests deeper. */
const DEEPEST = 64
const PIECE = 1 << 16

/** XML says its encoding in its first line; without, and without a mark, it is UTF-8. XML 1.0, 5th ed., appendix F. */
function xmlText(bytes: Uint8Array): Result<string> {
  const [a, b] = bytes
  // The mark, or the first angle of text that has lost it.
  const isLittle = (a === 0xff && b === 0xfe) || (a === 0x3c && b === 0)
  const isBig = (a === 0xfe && b === 0xff) || (a === 0 && b === 0x3c)
  const marked = isLittle ? 'utf-16le' : isBig ? 'utf-16be' : undefined
  const head = new TextDecoder('latin1').decode(bytes.subarray(0, 200))
  const label =
    marked ?? /^\s*(?:ï»¿)?<\?xml[^>]*encoding\s*=\s*["']([\w.:-]+)["']/.exec(head)?.[1] ?? 'utf-8'
  try {
    return ok(new TextDecoder(label, { fatal: true }).decode(bytes))
  } catch {
    return refused('encoding', '', `The text is not ${label}, as it should be: save the file as UTF-8.`)
  }
}

const localName = (name: string) => name.slice(name.indexOf(':') + 1)

/**
 * Reads XML with no tree in memory. A document type is refused before anything is read: it can make a small file endless, and no file
 * of places needs one.
 */
export function readXml(bytes: Uint8Array, listener: XmlListener): Result<null> {
  const text = xmlText(bytes)
  if (!text.ok) return text
  if (/<!(doctype|entity)/i.test(text.value))
    return refused(
      'document-type',
      '',
      'The file has a document type of its own: such files are not read. Save it again without.',
    )

  const parser = new SaxesParser()
  const texts: string[] = []
  let fault: string | undefined
  parser.on('error', (error) => {
    fault ??= error.message
  })
  parser.on('opentag', ({ name, attributes }) => {
    if (texts.length >= DEEPEST) fault ??= 'its elements lie too deep in one another'
    texts.push('')
    const all = attributes as Record<string, string | SaxesAttributePlain>
    listener.open(localName(name), (attribute) => {
      const found = Object.keys(all).find((each) => localName(each) === attribute)
      return found === undefined ? undefined : String(all[found])
    })
  })
  const hear = (piece: string) => {
    if (texts.length > 0) texts[texts.length - 1] += piece
  }
  parser.on('text', hear)
  parser.on('cdata', hear)
  parser.on('closetag', ({ name }) => listener.close(localName(name), texts.pop() ?? ''))
  for (let at = 0; at < text.value.length && !fault && !listener.isDone(); at += PIECE)
    parser.write(text.value.slice(at, at + PIECE))
  if (!fault && !listener.isDone()) parser.close()
  if (fault)
    return refused(
      'broken-xml',
      '',
      `The file is broken: ${fault.replaceAll('\n', ' ').replace(/\.$/, '')}. Save or copy it again.`,
    )
  return ok(null)
}
