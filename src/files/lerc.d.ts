/** Of the package only what is used here: it brings no types. */
declare module 'lerc' {
  export function decode(
    blob: ArrayBuffer,
    options: { readonly returnPixelInterleavedDims?: boolean },
  ): {
    readonly pixels: readonly (
      | Float32Array<ArrayBuffer>
      | Float64Array<ArrayBuffer>
      | Int32Array<ArrayBuffer>
    )[]
    readonly mask: Uint8Array | null | undefined
  }
}
