/** Only workers have it, and the types of a page do not know it. */
declare class FileReaderSync {
  readAsArrayBuffer(blob: Blob): ArrayBuffer
}
