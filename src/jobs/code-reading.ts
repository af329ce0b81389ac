import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader'
import wasm from 'zxing-wasm/reader/zxing_reader.wasm?url'

/** Codes that lie beside one another in one picture: a sheet of labels has as many. */
const MOST_CODES = 12

let ready: Promise<unknown> | undefined

/** Fetched by ourselves: the package would ask a public server, and a browser else wants a type that not every server gives. */
async function prepare(): Promise<void> {
  const response = await fetch(wasm)
  if (!response.ok) throw new Error('the reader of codes has not arrived')
  const wasmBinary = await response.arrayBuffer()
  await prepareZXingModule({ overrides: { wasmBinary }, fireImmediately: true })
}

export const CODE_JOBS = {
  /** The texts of the QR codes in a picture. */
  read: async (picture: ImageData | Blob): Promise<readonly string[]> => {
    ready ??= prepare()
    await ready
    const found = await readBarcodes(picture, { formats: ['QRCode'], maxNumberOfSymbols: MOST_CODES })
    return found.filter(({ isValid }) => isValid).map(({ text }) => text)
  },
}
