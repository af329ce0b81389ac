/** A file whose bytes come at once: SQLite cannot wait for them. A worker has such for a Blob, Node for a file on disk. */
export interface PromptFile {
  readonly name: string
  readonly sizeBytes: number
  /** So many bytes from a place, fewer at the end. */
  readonly readNow: (offset: number, length: number) => Uint8Array
}

export const promptBytes = (name: string, bytes: Uint8Array): PromptFile => ({
  name,
  sizeBytes: bytes.length,
  readNow: (offset, length) => bytes.subarray(offset, offset + length),
})
