/** A key that nothing kept here has. `crypto.randomUUID` is missing on plain http, as on a local network. */
export const newKey = (): string =>
  [...crypto.getRandomValues(new Uint8Array(8))].map((byte) => byte.toString(16).padStart(2, '0')).join('')
