import { readdirSync, readFileSync } from 'node:fs'
import { posix } from 'node:path'
import { expect, test } from 'vitest'

/** The data's way from the plan to its report: who shows or works on a report may know all of it. */
const TO_REPORT = [
  ...['plan', 'catalog', 'geo', 'terrain', 'hazard', 'route', 'measure', 'budget', 'field', 'fault'],
  ...['materials', 'report'],
]

/** What each folder may import besides itself and the four files on top. The order is the way the data goes. */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  geo: [],
  schema: [],
  catalog: ['schema'],
  plan: ['schema', 'catalog', 'geo'],
  terrain: ['plan', 'geo'],
  hazard: ['plan', 'geo', 'catalog', 'terrain'],
  route: ['plan', 'geo', 'catalog', 'terrain', 'hazard'],
  measure: ['plan', 'catalog', 'geo', 'terrain', 'hazard'],
  budget: ['plan', 'catalog', 'measure'],
  // What was read is reckoned with the budget's own network; what it teaches comes back as a catalog.
  field: ['plan', 'catalog', 'geo', 'measure', 'budget'],
  // Where a fault lies: what was read, held against every fault that there could be.
  fault: ['schema', 'plan', 'catalog', 'geo', 'measure', 'budget', 'field'],
  materials: ['plan', 'catalog', 'geo', 'measure', 'hazard', 'field'],
  report: [
    ...['plan', 'catalog', 'geo', 'terrain', 'hazard', 'route', 'measure', 'budget', 'field', 'fault'],
    'materials',
  ],
  shelf: ['schema', 'plan', 'catalog', 'geo', 'terrain', 'route', 'measure', 'budget', 'materials'],
  // What comes from another hand is read as strictly as a file.
  journal: ['schema', 'plan', 'catalog', 'budget', 'report'],
  words: [
    ...[
      'plan',
      'catalog',
      'geo',
      'hazard',
      'route',
      'measure',
      'budget',
      'field',
      'fault',
      'materials',
      'report',
    ],
    ...['shelf', 'journal'],
  ],
  files: [
    ...[
      'schema',
      'plan',
      'catalog',
      'geo',
      'terrain',
      'hazard',
      'measure',
      'budget',
      'field',
      'fault',
      'materials',
    ],
    ...['report', 'shelf', 'words', 'journal'],
  ],
  command: [
    ...['plan', 'geo', 'terrain', 'measure', 'budget', 'field', 'fault', 'materials', 'report'],
    ...['words', 'files', 'journal', 'shelf'],
  ],
  jobs: [...TO_REPORT, 'shelf', ...['words', 'files']],
  storage: ['plan', 'geo', 'terrain', 'hazard', 'shelf', 'files', 'jobs'],
  // What several change together, over a box that carries it sealed.
  share: ['schema', 'plan', 'files', 'journal'],
  state: [...TO_REPORT, 'shelf', 'share', ...['words', 'jobs']],
  figure: [...TO_REPORT, 'words'],
  map: [
    ...[
      'plan',
      'geo',
      'terrain',
      'hazard',
      'route',
      'measure',
      'budget',
      'field',
      'fault',
      'report',
      'words',
      'figure',
    ],
    'state',
  ],
  sheet: [
    ...TO_REPORT,
    // A print bears the fingerprint of the plan's own text.
    ...['words', 'files', 'jobs', 'state', 'figure'],
  ],
  panel: [
    ...TO_REPORT,
    'shelf',
    ...['words', 'figure', 'files', 'jobs', 'storage', 'share', 'state', 'schema', 'journal'],
  ],
  // What a hand holds in the rain, apart from the desk's panel, whose fields it takes.
  walk: [
    ...['plan', 'geo', 'hazard', 'measure', 'field', 'report'],
    ...['words', 'figure', 'state', 'panel'],
  ],
}

/** Packages, and the folders that may know them. A package that is not here has no place yet. */
const OWNERS: Readonly<Record<string, readonly string[]>> = {
  '@turf': ['geo'],
  'd3-polygon': ['hazard'],
  'd3-array': ['figure'],
  'd3-contour': ['terrain'],
  geojson: ['map'],
  geomagnetism: ['measure'],
  mgrs: ['geo'],
  proj4: ['geo'],
  geotiff: ['files'],
  zstddec: ['files'],
  lerc: ['files'],
  pmtiles: ['files'],
  '@mapbox/vector-tile': ['files'],
  pbf: ['files'],
  // Its wasm is fetched by whoever runs it.
  '@sqlite.org/sqlite-wasm': ['files', 'jobs'],
  saxes: ['files'],
  fflate: ['files', 'share'],
  papaparse: ['files'],
  idb: ['storage', 'share'],
  '@nats-io': ['share'],
  '@noble': ['share'],
  valibot: ['schema'],
  '@preact/signals': ['share', 'state', 'map', 'panel', 'sheet', 'walk'],
  leaflet: ['map'],
  'topojson-client': ['map'],
  'world-atlas': ['map'],
  preact: ['figure', 'panel', 'sheet', 'walk'],
  uqr: ['figure'],
  'zxing-wasm': ['jobs'],
}

/** Where the program starts: it joins the folders, and nothing imports it. */
const STARTS = ['main.tsx']

const files = readdirSync('src', { recursive: true, encoding: 'utf8' })
  .map((name) => name.replaceAll('\\', '/'))
  .filter((name) => /\.tsx?$/.test(name))
const layered = files.filter((file) => !STARTS.includes(file))

/** `import … from '…'`, `export … from '…'`, `import '…'`, `import('…')`, and what a worker is started from. */
const IMPORT =
  /^(?:import|export)\s[^'()=;]*?from\s+'([^']+)'|^import\s+'([^']+)'|\bimport\(\s*'([^']+)'|new URL\(\s*'([^']+)'/gm

const importsOf = (file: string) =>
  [...readFileSync(`src/${file}`, 'utf8').matchAll(IMPORT)].map(([, ...names]) => names.find(Boolean)!)

const folderOf = (file: string) => (file.includes('/') ? file.split('/')[0]! : '')
const targetOf = (file: string, name: string) => posix.join(posix.dirname(file), name)

test.each(layered)('%s imports only what lies before it', (file) => {
  const from = folderOf(file)
  for (const name of importsOf(file)) {
    if (name.startsWith('.')) {
      const target = targetOf(file, name)
      expect(STARTS, `${file} imports ${name}`).not.toContain(`${target}.ts`)
      const allowed = ['', from, ...(MAY_IMPORT[from] ?? [])]
      expect(allowed, `${file} imports ${name}`).toContain(folderOf(target))
    } else {
      const owner = Object.keys(OWNERS).find((each) => name === each || name.startsWith(`${each}/`))
      expect(owner, `${file} imports ${name}, a package with no place in the table`).toBeDefined()
      expect(OWNERS[owner!], `${file} imports ${name}`).toContain(from)
    }
  }
})

test('no file imports itself by way of others', () => {
  const done = new Set<string>()
  const visit = (file: string, trail: readonly string[]) => {
    expect(trail, [...trail, file].join(' → ')).not.toContain(file)
    if (done.has(file)) return
    for (const name of importsOf(file)) {
      const target = targetOf(file, name)
      const next = files.find((each) => [target, `${target}.ts`, `${target}.tsx`].includes(each))
      if (name.startsWith('.') && next) visit(next, [...trail, file])
    }
    done.add(file)
  }
  for (const file of files) visit(file, [])
})

test('only isolated, memo, units and problem stand outside the folders', () => {
  expect(files.filter((file) => folderOf(file) === '').sort()).toEqual([
    'isolated.ts',
    'main.tsx',
    'memo.ts',
    'problem.ts',
    'units.ts',
  ])
})
