/** RFC 9285, section 4.2: the letters that a QR code holds in five and a half bits each. */
const LETTERS = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:'

/** Bytes as letters that a QR code holds nearly as well as the bytes, and every reader gives back unharmed (RFC 9285). */
export function toBase45(bytes: Uint8Array): string {
  let text = ''
  for (let at = 0; at < bytes.length; at += 2) {
    const isPair = at + 1 < bytes.length
    const n = isPair ? bytes[at]! * 256 + bytes[at + 1]! : bytes[at]!
    text += LETTERS[n % 45]! + LETTERS[Math.floor(n / 45) % 45]!
    if (isPair) text += LETTERS[Math.floor(n / 2025)]!
  }
  return text
}

/** Undefined where the text is not of that kind. */
export function fromBase45(text: string): Uint8Array | undefined {
  if (text.length % 3 === 1) return undefined
  const bytes: number[] = []
  for (let at = 0; at < text.length; at += 3) {
    const digits = [...text.slice(at, at + 3)].map((letter) => LETTERS.indexOf(letter))
    if (digits.includes(-1)) return undefined
    const n = digits[0]! + 45 * digits[1]! + 2025 * (digits[2] ?? 0)
    if (digits.length === 3) {
      if (n > 0xffff) return undefined
      bytes.push(n >> 8, n & 255)
    } else {
      if (n > 0xff) return undefined
      bytes.push(n)
    }
  }
  return Uint8Array.from(bytes)
}
