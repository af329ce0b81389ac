/** RFC 4648, section 5, without padding. */
export function toBase64Url(bytes: Uint8Array): string {
  let binary = ''
  for (const byte of bytes) binary += String.fromCharCode(byte)
  return btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '')
}

/** Undefined where the text is not of that kind. */
export function fromBase64Url(text: string): Uint8Array | undefined {
  if (!/^[\w-]+$/.test(text)) return undefined
  try {
    return Uint8Array.from(atob(text.replaceAll('-', '+').replaceAll('_', '/')), (letter) =>
      letter.charCodeAt(0),
    )
  } catch {
    return undefined
  }
}
