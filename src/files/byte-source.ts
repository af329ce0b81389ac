/** Bytes at any place of a file, so that one reader serves a browser's File, a file on disk and a test's array. */
export interface ByteSource {
  readonly name: string
  readonly sizeBytes: number
  /** Exactly so many bytes from a place, or a rejection. */
  read(offset: number, length: number): Promise<Uint8Array<ArrayBuffer>>
}

export const bytesFrom = (name: string, bytes: Uint8Array<ArrayBuffer>): ByteSource => ({
  name,
  sizeBytes: bytes.length,
  read: async (offset, length) => bytes.subarray(offset, offset + length),
})

export const bytesFromBlob = (name: string, blob: Blob): ByteSource => ({
  name,
  sizeBytes: blob.size,
  read: async (offset, length) => new Uint8Array(await blob.slice(offset, offset + length).arrayBuffer()),
})

/** How a long reading reports on itself, and how it is stopped. */
export interface Reading {
  readonly signal?: AbortSignal
  /** Part done, 0…1. */
  readonly onProgress?: (done: number) => void
}
