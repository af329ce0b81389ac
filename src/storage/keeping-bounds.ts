/**
 * How much of an online map is kept at most, and how fast it is asked for: allowances of our own. Servers that allow keeping
 * mostly ask for a few requests a second and forbid whole countries; a few square kilometres down to zoom 17 are some hundred tiles.
 */
export const KEEPING = { mostTiles: 1500, mostBytes: 60e6, tilesPerS: 4, deepestZoom: 19 } as const
