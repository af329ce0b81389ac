/** Whether an address names a tile server: over a safe connection, with places for the tile's zoom, column and row. */
export const isTileAddress = (url: string): boolean =>
  /^https:\/\/[^/{}]+\//.test(url) && ['{z}', '{x}', '{y}'].every((part) => url.includes(part))
