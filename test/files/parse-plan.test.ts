import { expect, test } from 'vitest'
import { parsePlan } from '../../src/files/parse-plan'
import { QUARRY_TEXT } from './quarry-net'

/** A file as a test may spoil it. */
// biome-ignore lint/suspicious/noExplicitAny: the file is spoilt in ways that no type allows
type File = any

const spoilt = (spoil: (file: File) => void): string => {
  const file = JSON.parse(QUARRY_TEXT)
  spoil(file)
  return JSON.stringify(file)
}

const problemsOf = (text: string) => {
  const result = parsePlan(text)
  return result.ok ? [] : result.problems
}

const wire = (file: File) => file.plan.catalog.wires[0]
const set = (file: File) => file.plan.catalog.sets[0]
const circuit = (file: File, index: number) => file.plan.circuits[index]
/** Features 0 to 2 are stations, 3 to 5 lines, 6 and 7 hazards, 8 is another program's. */
const feature = (file: File, index: number) => file.features[index]

const FAULTS: readonly [what: string, at: string, code: string, spoil: (file: File) => void][] = [
  ['no feature collection', 'type', 'unknown-word', (file) => (file.type = 'Feature')],
  ['no features', 'features', 'missing', (file) => delete file.features],
  ['features by name', 'features', 'wrong-type', (file) => (file.features = {})],
  ['no member "plan"', 'plan', 'no-plan', (file) => delete file.plan],
  ['another format', 'plan.format', 'no-plan', (file) => (file.plan.format = 'sketch')],
  ['a newer version', 'plan.version', 'newer-version', (file) => (file.plan.version = 2)],
  ['a version in quotes', 'plan.version', 'no-plan', (file) => (file.plan.version = '1')],
  ['a title that is a number', 'plan.title', 'wrong-type', (file) => (file.plan.title = 4)],
  ['weather that is no weather', 'plan.weather', 'unknown-word', (file) => (file.plan.weather = 'fog')],
  ['a wire at 200 °C', 'plan.wireTempC', 'out-of-range', (file) => (file.plan.wireTempC = 200)],
  ['NaN in quotes', 'plan.allowances.tailM', 'out-of-range', (file) => (file.plan.allowances.tailM = 'NaN')],
  [
    'negative slack',
    'plan.allowances.slackPct.surface',
    'out-of-range',
    (file) => (file.plan.allowances.slackPct.surface = -1),
  ],
  [
    'stock of a wire unheard of',
    'plan.stock[1].wire',
    'unknown-wire',
    (file) => (file.plan.stock[1].wire = 'x'),
  ],
  ['half a spool', 'plan.stock[0].count', 'out-of-range', (file) => (file.plan.stock[0].count = 0.5)],
  [
    'a spool of no length',
    'plan.stock[0].lengthM',
    'out-of-range',
    (file) => (file.plan.stock[0].lengthM = 0),
  ],

  [
    'a negative resistance',
    'plan.catalog.wires[0].loopOhmPerKm',
    'out-of-range',
    (file) => (wire(file).loopOhmPerKm = -74),
  ],
  ['a wire with no mass', 'plan.catalog.wires[0].kgPerKm', 'missing', (file) => delete wire(file).kgPerKm],
  [
    'a spool of negative length',
    'plan.catalog.wires[0].spoolsM[0]',
    'out-of-range',
    (file) => (wire(file).spoolsM = [-5]),
  ],
  [
    'two wires of one id',
    'plan.catalog.wires[1].id',
    'repeated-id',
    (file) => file.plan.catalog.wires.push(wire(file)),
  ],
  [
    'a set with no impedance',
    'plan.catalog.sets[0].offHook.acOhms',
    'out-of-range',
    (file) => (set(file).offHook.acOhms = 0),
  ],
  ['a ringer in words', 'plan.catalog.sets[0].ringer', 'wrong-type', (file) => (set(file).ringer = 'loud')],
  [
    'a supply of a kind unheard of',
    'plan.catalog.supplies[0].kind',
    'unknown-word',
    (file) => file.plan.catalog.supplies.push({ id: 's', kind: 'solar', volts: 1, ohms: 1 }),
  ],

  [
    'a station with no id',
    'features[2].id',
    'missing',
    (file) => {
      delete feature(file, 2).id
      delete circuit(file, 0).sets.face
      feature(file, 4).properties.to = 'gate'
      feature(file, 5).properties.from = 'crusher'
      feature(file, 4).geometry.coordinates[1] = feature(file, 0).geometry.coordinates
      feature(file, 5).geometry.coordinates[0] = feature(file, 1).geometry.coordinates
    },
  ],
  ['two features of one id', 'features[6].id', 'repeated-id', (file) => (feature(file, 6).id = 'l1')],
  [
    'a latitude of 95°',
    'features[6].geometry.coordinates[0]',
    'off-globe',
    (file) => (feature(file, 6).geometry.coordinates[0] = [0, 95]),
  ],
  [
    'latitude before longitude',
    'features[6].geometry.coordinates[0]',
    'off-globe',
    (file) => (feature(file, 6).geometry.coordinates[0] = [47, -120]),
  ],
  [
    'coordinates that are no list',
    'features[6].geometry.coordinates',
    'wrong-type',
    (file) => (feature(file, 6).geometry.coordinates = 'here'),
  ],
  [
    'a position of four numbers',
    'features[6].geometry.coordinates[1]',
    'wrong-type',
    (file) => feature(file, 6).geometry.coordinates[1].push(1, 2),
  ],
  [
    'a feature with no geometry',
    'features[7].geometry',
    'wrong-type',
    (file) => (feature(file, 7).geometry = null),
  ],
  [
    'an open ring',
    'features[7].geometry.coordinates[0][3]',
    'open-ring',
    (file) => {
      feature(file, 7).geometry.coordinates[0][3] = [-20.07, 47.3]
    },
  ],
  [
    'a hazard unheard of',
    'features[6].properties.hazard',
    'unknown-word',
    (file) => {
      feature(file, 6).properties.hazard = 'bear'
    },
  ],
  ['a feature that is a number', 'features[9]', 'wrong-type', (file) => file.features.push(5)],

  [
    'a line to a missing station',
    'features[3].properties.to',
    'unknown-station',
    (file) => {
      feature(file, 3).properties.to = 'nowhere'
    },
  ],
  [
    'a line to itself',
    'features[3].properties.to',
    'line-to-itself',
    (file) => {
      feature(file, 3).properties.to = 'gate'
      feature(file, 3).geometry.coordinates[2] = [-20.1, 47.3]
    },
  ],
  [
    'a leg too few',
    'features[3].properties.legs',
    'legs-mismatch',
    (file) => feature(file, 3).properties.legs.pop(),
  ],
  [
    'a lay unheard of',
    'features[3].properties.legs[0].lay',
    'unknown-word',
    (file) => {
      feature(file, 3).properties.legs[0].lay = 'flown'
    },
  ],
  [
    'a wire unheard of',
    'features[3].properties.wire',
    'unknown-wire',
    (file) => {
      feature(file, 3).properties.wire = 'silk'
    },
  ],
  [
    'no pairs',
    'features[3].properties.pairs',
    'out-of-range',
    (file) => (feature(file, 3).properties.pairs = 0),
  ],
  [
    'earth return with no electrodes',
    'features[4].properties.electrodeOhms',
    'missing',
    (file) => {
      delete feature(file, 4).properties.electrodeOhms
    },
  ],
  [
    'one electrode',
    'features[4].properties.electrodeOhms',
    'wrong-count',
    (file) => {
      feature(file, 4).properties.electrodeOhms = [5]
    },
  ],
  // 0.0001° of latitude are 11 m.
  [
    'an end 11 m from its station',
    'features[3].geometry.coordinates[0]',
    'end-off-station',
    (file) => {
      feature(file, 3).geometry.coordinates[0] = [-20.1, 47.3001]
    },
  ],

  [
    'a day of more than 24 hours of talk',
    'plan.work.talkMinutesPerDay',
    'out-of-range',
    (file) => (file.plan.work = { talkMinutesPerDay: 1441 }),
  ],
  [
    'a circuit with no lines',
    'plan.circuits[1].lines',
    'wrong-count',
    (file) => (circuit(file, 1).lines = []),
  ],
  [
    'a circuit of lines that are not',
    'plan.circuits[1].lines[0]',
    'unknown-line',
    (file) => {
      circuit(file, 1).lines = ['l9']
    },
  ],
  [
    'a line twice in a circuit',
    'plan.circuits[1].lines[1]',
    'repeated-line',
    (file) => {
      circuit(file, 1).lines = ['l1', 'l1']
    },
  ],
  [
    'more circuits than pairs',
    'plan.circuits[1].lines[0]',
    'too-few-pairs',
    (file) => {
      feature(file, 3).properties.pairs = 1
    },
  ],
  ['two circuits of one id', 'plan.circuits[1].id', 'repeated-id', (file) => (circuit(file, 1).id = 'yard')],
  [
    'a set unheard of',
    'plan.circuits[0].sets.gate',
    'unknown-set',
    (file) => (circuit(file, 0).sets.gate = 'horn'),
  ],
  [
    'a set at no station',
    'plan.circuits[0].sets["hut 9"]',
    'unknown-station',
    (file) => {
      circuit(file, 0).sets['hut 9'] = 'crank-1600'
    },
  ],
  [
    'a set off the circuit',
    'plan.circuits[1].sets.face',
    'off-circuit',
    (file) => {
      circuit(file, 1).sets.face = 'crank-1600'
    },
  ],
  [
    'a supply unheard of',
    'plan.circuits[1].supply.type',
    'unknown-supply',
    (file) => {
      circuit(file, 1).supply.type = 'eel'
    },
  ],
  [
    'a supply off the circuit',
    'plan.circuits[1].supply.at',
    'off-circuit',
    (file) => {
      circuit(file, 1).supply.at = 'face'
    },
  ],
  [
    'a supply that stands nowhere',
    'plan.circuits[1].supply.at',
    'missing',
    (file) => {
      delete circuit(file, 1).supply.at
    },
  ],
]

test.each(FAULTS)('%s is refused at %s', (_, at, code, spoil) => {
  const problems = problemsOf(spoilt(spoil))
  expect(problems.map((problem) => [problem.at, problem.code])).toEqual([[at, code]])
  expect(problems[0]!.message).toMatch(/^[^\n]+: [^\n]+\.$/)
})

test('a circuit in two unconnected pieces is refused', () => {
  const text = spoilt((file) => {
    file.features.push(
      { ...structuredClone(feature(file, 2)), id: 'p', geometry: { type: 'Point', coordinates: [0, 1] } },
      { ...structuredClone(feature(file, 2)), id: 'q', geometry: { type: 'Point', coordinates: [0, 2] } },
    )
    const apart = structuredClone(feature(file, 4))
    apart.id = 'l4'
    apart.properties.from = 'p'
    apart.properties.to = 'q'
    apart.geometry.coordinates = [
      [0, 1],
      [0, 2],
    ]
    file.features.push(apart)
    circuit(file, 1).lines.push('l4')
  })
  expect(problemsOf(text)).toMatchObject([{ code: 'unconnected', at: 'plan.circuits[1].lines' }])
})

test('a name that stands twice in an object is refused where it stands the second time', () => {
  const text = QUARRY_TEXT.replace(
    '"gate": "crank-1600",',
    '"gate": "crank-1600", "a\\"b,{": 1, "g\\u0061te": "crank-2500",',
  )
  expect(problemsOf(text).map((problem) => [problem.at, problem.code])).toEqual([
    ['plan.circuits[0].sets.gate', 'repeated-name'],
    ['plan.circuits[0].sets["a\\"b,{"]', 'unknown-station'],
    ['plan.circuits[0].sets["a\\"b,{"]', 'unknown-set'],
  ])
})

test('every fault of a file is listed, not the first alone', () => {
  const independent = FAULTS.filter(([, at]) =>
    /wireTempC|kgPerKm|hazard|acOhms|lay$|stock|sets\.gate/.test(at),
  )
  const text = spoilt((file) => {
    for (const [, , , spoil] of independent) spoil(file)
  })
  expect(independent.length).toBeGreaterThan(7)
  const found = new Set(problemsOf(text).map((problem) => problem.at))
  for (const [, at] of independent) expect(found).toContain(at)
})

test('a faulty station is told once, and not again by the lines and sets that name it', () => {
  const text = spoilt((file) => (feature(file, 0).properties.name = 7))
  expect(problemsOf(text)).toMatchObject([{ at: 'features[0].properties.name' }])
})

test('a line with a fault of its own still counts in its circuit', () => {
  const text = spoilt((file) => {
    feature(file, 3).properties.wire = 'silk'
    circuit(file, 1).sets.face = 'crank-1600'
  })
  expect(problemsOf(text).map((problem) => problem.code)).toEqual(['unknown-wire', 'off-circuit'])
})
