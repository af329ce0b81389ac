declare module 'bidi-js' {
  interface Levels {
    readonly levels: Uint8Array
  }
  export default function bidiFactory(): {
    getEmbeddingLevels(text: string, direction: 'ltr' | 'rtl'): Levels
    getReorderedString(text: string, levels: Levels): string
  }
}
