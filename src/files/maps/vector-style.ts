/** How a thing of a vector tile is drawn; one that is nothing here is left out. */
export interface Drawn {
  readonly fill?: string
  readonly stroke?: string
  /** Width at zoom 14, px of a tile of 512; it halves in two levels outwards. */
  readonly widthPx?: number
  readonly dash?: readonly number[]
  /** A name is written at it, in letters so large, px. */
  readonly letterPx?: number
  /** What lies lower is drawn first. */
  readonly level: number
}

/** What a feature says of itself, as far as maps agree on it. */
export type Said = Readonly<Record<string, unknown>>
export type Shape = 'point' | 'line' | 'area'

const INK = '#3d3a35'
const WATER = '#b9d3e3'
const WATER_LINE = '#6d9dbd'

/**
 * Which layer's features are drawn how: our own plain map for wire to be seen on. Layers and their words are those of the schemas that most
 * archives have: OpenMapTiles 3, Protomaps Basemap 4, Shortbread 1.
 */
const RULES: readonly {
  readonly layers: RegExp
  readonly shape: Shape
  readonly words?: RegExp
  readonly drawn: Drawn
}[] = [
  { layers: /^(earth|land$)/, shape: 'area', drawn: { fill: '#f7f4ec', level: 0 } },
  {
    layers: /^(landcover|landuse|park|land)/,
    shape: 'area',
    words: /wood|forest|scrub/,
    drawn: { fill: '#dfe8d3', level: 1 },
  },
  {
    layers: /^(landcover|landuse|park|land)/,
    shape: 'area',
    words: /grass|park|meadow|nature|farm|pasture|orchard/,
    drawn: { fill: '#eaefdd', level: 1 },
  },
  {
    layers: /^(landcover|landuse|land)/,
    shape: 'area',
    words: /wetland|swamp|marsh/,
    drawn: { fill: '#dfe9e4', level: 1 },
  },
  {
    layers: /^(landcover|landuse|land)/,
    shape: 'area',
    words: /glacier|ice|sand|beach|rock|scree/,
    drawn: { fill: '#efece6', level: 1 },
  },
  {
    layers: /^(landuse|land|sites)/,
    shape: 'area',
    words: /resid|industr|commerc|retail|urban|military|quarry/,
    drawn: { fill: '#ece6dc', level: 1 },
  },
  {
    layers: /^(water$|ocean|water_polygons)/,
    shape: 'area',
    drawn: { fill: WATER, stroke: WATER_LINE, widthPx: 0.7, level: 2 },
  },
  {
    layers: /^(water|waterway|water_lines|physical_line)/,
    shape: 'line',
    words: /river|canal/,
    drawn: { stroke: WATER_LINE, widthPx: 2.4, level: 2 },
  },
  {
    layers: /^(water|waterway|water_lines|physical_line)/,
    shape: 'line',
    drawn: { stroke: WATER_LINE, widthPx: 1.2, level: 2 },
  },
  { layers: /^contour/, shape: 'line', drawn: { stroke: '#c9ab86', widthPx: 0.7, level: 3 } },
  {
    layers: /^building/,
    shape: 'area',
    drawn: { fill: '#cfc7ba', stroke: '#a79d8c', widthPx: 0.6, level: 4 },
  },
  {
    layers: /^(transportation|roads|transit|streets|railway)$/,
    shape: 'line',
    words: /rail|tram|subway|light_rail/,
    drawn: { stroke: '#6f6a62', widthPx: 1.6, dash: [6, 3], level: 7 },
  },
  {
    layers: /^(transportation|roads|streets)$/,
    shape: 'line',
    words: /motorway|trunk|highway/,
    drawn: { stroke: '#b98c4d', widthPx: 4.5, level: 7 },
  },
  {
    layers: /^(transportation|roads|streets)$/,
    shape: 'line',
    words: /primary|secondary|major/,
    drawn: { stroke: '#c9a871', widthPx: 3.4, level: 6 },
  },
  {
    layers: /^(transportation|roads|streets)$/,
    shape: 'line',
    words: /path|foot|track|cycle|bridleway|steps|other/,
    drawn: { stroke: '#8b8377', widthPx: 1.1, dash: [4, 3], level: 5 },
  },
  {
    layers: /^(transportation|roads|streets)$/,
    shape: 'line',
    drawn: { stroke: '#a39a8b', widthPx: 1.8, level: 5 },
  },
  { layers: /power/, shape: 'line', drawn: { stroke: INK, widthPx: 0.8, level: 8 } },
  {
    layers: /^(boundar|admin)/,
    shape: 'line',
    drawn: { stroke: '#8f86a0', widthPx: 1, dash: [8, 3, 2, 3], level: 8 },
  },
  {
    layers: /^(places?$|place_labels)/,
    shape: 'point',
    words: /country|state|region|city|capital/,
    drawn: { letterPx: 17, level: 10 },
  },
  {
    layers: /^(places?$|place_labels)/,
    shape: 'point',
    words: /town|locality/,
    drawn: { letterPx: 14, level: 9 },
  },
  {
    layers: /^(places?$|place_labels|mountain_peak|pois?$|peak)/,
    shape: 'point',
    drawn: { letterPx: 12, level: 9 },
  },
]

/** A layer that no schema names still shows where its lines run: it may be what the map is about. */
const OTHER: Readonly<Record<Shape, Drawn | undefined>> = {
  point: { letterPx: 12, level: 9 },
  line: { stroke: '#8b8377', widthPx: 1, level: 5 },
  area: { stroke: '#a79d8c', widthPx: 0.8, level: 4 },
}
const KNOWN_LAYERS = new RegExp(RULES.map(({ layers }) => layers.source).join('|'))
/** Layers of names along lines, house numbers and the like: too many words for a map that wire is drawn on. */
const LEFT_OUT = /_name|label|housenumber|aero|addresses|pier|dam|ferr/

/** Members that say what a feature is. */
const WORDS = 'class kind subclass kind_detail highway type landuse natural waterway railway place'.split(' ')

/** How a feature is drawn; undefined for not at all. */
export function drawnAs(layer: string, shape: Shape, said: Said): Drawn | undefined {
  const words = WORDS.map((key) => said[key] ?? '').join(' ')
  const rule = RULES.find(
    (each) => each.shape === shape && each.layers.test(layer) && (each.words?.test(words) ?? true),
  )
  if (rule) return rule.drawn
  return KNOWN_LAYERS.test(layer) || LEFT_OUT.test(layer) ? undefined : OTHER[shape]
}

/** The name that is written: in the reader's tongue nobody can know, so the one that stands on signposts there. */
export const nameOf = (said: Said): string => {
  const name = said.name ?? said['name:latin'] ?? said.name_en ?? said['name:en'] ?? ''
  return typeof name === 'string' ? name.slice(0, 60) : ''
}
