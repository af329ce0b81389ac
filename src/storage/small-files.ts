/** Up to so many bytes a text is read sooner on the page than a worker starts, and freezes nothing. */
export const SMALL_BYTES = 200_000
/** The same of what is packed: it may unpack to two hundred times as much. */
export const SMALL_PACKED_BYTES = 10_000
