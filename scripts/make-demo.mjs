// Writes public/demo.plan.geojson, a net for an invented survey camp, and public/demo.terrain.tif, the ground under it.
// Run it again after a change here; it is seeded.
import { writeFileSync } from 'node:fs'
import { writeArrayBuffer } from 'geotiff'
import { heightM, positionAt, seeded, streamNorthM } from './demo-land.mjs'

const random = seeded(20261125)

const STATIONS = {
  camp: { name: 'Camp', at: [0, 0], note: 'Mess tent, north pole: the telephones hang inside the door.' },
  sheepfold: { name: 'Sheepfold', at: [-1180, 460], note: 'Stone fold, lee side.' },
  cairn: { name: 'Cairn', at: [-2420, 1310], note: '' },
  lookout: { name: 'Lookout', at: [-3380, 2440], note: 'Highest post: earth the line when the sky darkens.' },
  ford: { name: 'Ford', at: [1120, -1010], note: 'Hut on the near bank. The feed stands here.' },
  weir: { name: 'Weir', at: [2510, -1420], note: 'Gauge house.' },
  osier: { name: 'Osier bed', at: [480, -2260], note: '' },
  kiln: { name: 'Old kiln', at: [1060, 2180], note: 'Set in the firing room.' },
  gate: { name: 'Road gate', at: [-760, -1050], note: '' },
  shed: { name: 'Core shed', at: [-2400, -1800], note: 'The board stands on the bench by the window.' },
  northrig: { name: 'North rig', at: [-3180, -1480], note: '' },
  southrig: { name: 'South rig', at: [-2960, -2250], note: '' },
  pump: { name: 'Pump', at: [-1850, -1400], note: 'Near bank; keep the wire off the hoses.' },
}

/** Line by line: its stations, its wire, and leg by leg where it bends and how it lies. */
const LINES = {
  'camp-sheepfold': {
    wire: 'wd-1a',
    pairs: 2,
    bends: [
      [-310, 60],
      [-820, 240],
    ],
    legs: [
      { lay: 'overhead', note: 'Over the cart gate on two lances, 4.5 m up.' },
      { lay: 'surface' },
      { lay: 'surface' },
    ],
  },
  'sheepfold-cairn': {
    wire: 'wd-1a',
    bends: [
      [-1490, 830],
      [-1980, 960],
    ],
    legs: [
      { lay: 'surface', note: 'Tie at the thorn, then keep the wall on your left.' },
      { lay: 'surface' },
      { lay: 'surface' },
    ],
  },
  'cairn-lookout': {
    wire: 'wd-1a',
    bends: [
      [-2710, 1620],
      [-3050, 2160],
    ],
    legs: [
      { lay: 'surface' },
      { lay: 'buried', note: 'Scree: bury one hand deep, stones on top.' },
      { lay: 'surface', slackPct: 25 },
    ],
  },
  'camp-ford': {
    wire: 'wd-1a',
    bends: [
      [360, -240],
      [410, -330],
      [850, -720],
    ],
    legs: [
      { lay: 'surface' },
      {
        lay: 'overhead',
        sagPct: 2.5,
        note: 'Over the road between two poles; they want to be taller than usual.',
      },
      { lay: 'surface' },
      { lay: 'surface' },
    ],
  },
  'ford-weir': {
    wire: 'wd-1a',
    bends: [
      [1560, -1080],
      [2130, -1210],
    ],
    legs: [
      { lay: 'surface' },
      { lay: 'surface' },
      { lay: 'surface', note: 'Behind the gauge house, not along the sill.' },
    ],
  },
  'ford-osier': {
    wire: 'wd-1a',
    bends: [
      [1030, streamNorthM(1030) + 45],
      [990, streamNorthM(990) - 55],
      [700, -1960],
    ],
    legs: [
      { lay: 'surface' },
      { lay: 'water', note: 'Weight it every 3 m; test before and after.' },
      { lay: 'surface' },
      { lay: 'surface' },
    ],
  },
  'camp-kiln': {
    wire: 'network-cca-24',
    bends: [
      [270, 690],
      [330, 860],
      [790, 1510],
    ],
    legs: [
      { lay: 'surface' },
      { lay: 'buried', note: 'Under the railway in the culvert, never over the rails.' },
      { lay: 'surface' },
      { lay: 'surface' },
    ],
  },
  'camp-gate': {
    wire: 'copper-22',
    bends: [
      [-170, -260],
      [-270, -450],
    ],
    legs: [{ lay: 'surface' }, { lay: 'buried' }, { lay: 'surface' }],
  },
  'shed-northrig': {
    wire: 'wd-1a',
    bends: [[-2790, -1560]],
    legs: [{ lay: 'surface' }, { lay: 'surface' }],
  },
  'shed-southrig': {
    wire: 'wd-1a',
    bends: [[-2640, -2110]],
    legs: [{ lay: 'surface' }, { lay: 'surface' }],
  },
  'shed-pump': {
    wire: 'wd-1a',
    bends: [[-2130, -1690]],
    legs: [{ lay: 'surface' }, { lay: 'surface' }],
  },
}

const CIRCUITS = [
  {
    id: 'camp-net',
    name: 'Camp net',
    lines: ['camp-sheepfold', 'sheepfold-cairn', 'cairn-lookout'],
    sets: { camp: 'crank-1600', sheepfold: 'crank-1600', cairn: 'crank-1600', lookout: 'crank-1600' },
    supply: null,
  },
  {
    id: 'river-net',
    name: 'River net',
    lines: ['camp-ford', 'ford-weir', 'ford-osier'],
    sets: { camp: 'common-1-ren', weir: 'common-1-ren', osier: 'common-1-ren' },
    supply: { type: 'feed-48', at: 'ford' },
  },
  {
    id: 'kiln-ringdown',
    name: 'Kiln ringdown',
    lines: ['camp-kiln', 'camp-gate'],
    sets: { kiln: 'common-1-ren', gate: 'common-1-ren' },
    supply: { type: 'ringdown-24', at: 'camp' },
  },
  {
    id: 'stores-line',
    name: 'Stores line',
    lines: ['camp-sheepfold'],
    sets: { camp: 'common-1-ren', sheepfold: 'common-1-ren' },
    supply: { type: 'two-9-volt-led', at: 'camp' },
  },
  {
    id: 'drill-board',
    name: 'Drill board',
    lines: ['shed-northrig', 'shed-southrig', 'shed-pump'],
    sets: { shed: 'crank-1600', northrig: 'crank-1600', southrig: 'crank-1600', pump: 'crank-1600' },
    supply: { type: 'board-4-keys-drops', at: 'shed' },
  },
]

/** @param {(eastM: number) => number} northM a hand-drawn line would wander a little from it */
function wander(fromEastM, toEastM, northM, wanderM) {
  const count = 14
  return Array.from({ length: count + 1 }, (_, i) => {
    const eastM = fromEastM + ((toEastM - fromEastM) * i) / count
    return positionAt(eastM, northM(eastM) + (random() - 0.5) * wanderM)
  })
}

const hazard = (id, kind, name, geometry) => ({
  type: 'Feature',
  id,
  properties: { kind: 'hazard', hazard: kind, name },
  geometry,
})
const along = (coordinates) => ({ type: 'LineString', coordinates })

const HAZARDS = [
  hazard('stream', 'water', 'Stream', along(wander(-4200, 4200, streamNorthM, 0))),
  hazard(
    'road',
    'road',
    'County road',
    along(wander(-4200, 4200, (e) => -320 + 0.09 * e + 60 * Math.sin(e / 900), 20)),
  ),
  hazard(
    'cart-track',
    'track',
    'Cart track',
    along(
      [
        [-420, -350],
        [-330, -60],
        [-170, 200],
        [-200, 900],
        [-90, 1800],
      ].map(([e, n]) => positionAt(e, n)),
    ),
  ),
  hazard(
    'railway',
    'railway',
    'Mineral railway',
    along(
      [
        [-1700, 3700],
        [-1420, 2900],
        [-1010, 2050],
        [-520, 1290],
        [0, 880],
        [500, 730],
        [1300, 690],
        [2400, 830],
        [4200, 1250],
      ].map(([e, n]) => positionAt(e, n)),
    ),
  ),
  hazard(
    'power-line',
    'power-line',
    '20 kV power line',
    along(
      [
        [-2050, 3400],
        [-1760, 900],
        [-1610, -400],
        [-1500, -3200],
      ].map(([e, n]) => positionAt(e, n)),
    ),
  ),
  hazard('blast-pit', 'keep-out', 'Blasting pit', {
    type: 'Polygon',
    coordinates: [
      [
        [1290, 1260],
        [1650, 1310],
        [1720, 1680],
        [1400, 1760],
        [1290, 1260],
      ].map(([e, n]) => positionAt(e, n)),
    ],
  }),
]

const stationFeature = ([id, { name, at, note }]) => ({
  type: 'Feature',
  id,
  properties: { kind: 'station', name, note },
  geometry: { type: 'Point', coordinates: positionAt(...at) },
})

function lineFeature([id, { wire, pairs = 1, bends, legs }]) {
  const [from, to] = id.split('-')
  const places = [STATIONS[from].at, ...bends, STATIONS[to].at]
  return {
    type: 'Feature',
    id,
    properties: { kind: 'line', from, to, wire, pairs, return: 'pair', legs },
    geometry: along(places.map(([eastM, northM]) => positionAt(eastM, northM))),
  }
}

const plan = {
  type: 'FeatureCollection',
  plan: {
    format: 'fieldpair-plan',
    version: 1,
    // A member of the demo's own: by it the program knows whose the invented hills are (storage/demo.ts).
    demoGround: true,
    title: 'Ravel Moor survey camp',
    note: 'An invented place, to try the program on. Make it yours, or begin a new plan.',
    weather: 'dry',
    wireTempC: 5,
    circuits: CIRCUITS,
    stock: [],
  },
  features: [
    ...Object.entries(STATIONS).map(stationFeature),
    ...Object.entries(LINES).map(lineFeature),
    ...HAZARDS,
  ],
}

const GRID = { columns: 170, rows: 140, cellM: 55, westM: -4600, northM: 3800 }

/** The ground of the same country, as an elevation file like any other. */
function terrainFile() {
  const { columns, rows, cellM, westM, northM } = GRID
  const heights = Float32Array.from({ length: columns * rows }, (_, cell) => {
    const eastM = westM + ((cell % columns) + 0.5) * cellM
    return Math.round(heightM(eastM, northM - (Math.floor(cell / columns) + 0.5) * cellM) * 10) / 10
  })
  const [lonDeg, latDeg] = positionAt(westM, northM)
  const [oneEastDeg] = positionAt(westM + cellM * columns, northM)
  const [, oneSouthDeg] = positionAt(westM, northM - cellM * rows)
  return writeArrayBuffer(heights, {
    width: columns,
    height: rows,
    ImageDescription: 'Invented terrain for the demo plan of Fieldpair: no real place',
    SampleFormat: [3],
    BitsPerSample: [32],
    GTModelTypeGeoKey: 2,
    GTRasterTypeGeoKey: 1,
    GeographicTypeGeoKey: 4326,
    ModelTiepoint: [0, 0, 0, lonDeg, latDeg, 0],
    ModelPixelScale: [(oneEastDeg - lonDeg) / columns, (latDeg - oneSouthDeg) / rows, 0],
  })
}

const inPublic = (name) => new URL(`../public/${name}`, import.meta.url)
writeFileSync(inPublic('demo.plan.geojson'), `${JSON.stringify(plan, null, 2)}\n`)
writeFileSync(inPublic('demo.terrain.tif'), new Uint8Array(await terrainFile()))
