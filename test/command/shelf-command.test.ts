import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { runReport } from '../../src/command/report-command'
import { runShelf } from '../../src/command/shelf-command'

async function run(content: unknown, ...args: readonly string[]) {
  const printed = { out: '', err: '' }
  const code = await runShelf(args.length > 0 ? args : ['shelf'], {
    readBytes: async (path) => {
      if (path !== 'shelf') throw new Error('no such file')
      return new TextEncoder().encode(typeof content === 'string' ? content : JSON.stringify(content))
    },
    write: async () => {},
    out: (text) => {
      printed.out += text
    },
    err: (text) => {
      printed.err += text
    },
  })
  return { code, ...printed }
}

const TWO = {
  places: [{ name: 'Camp' }, { name: 'Ford' }],
  distancesM: [
    [0, 700],
    [700, 0],
  ],
  have: {
    wires: [{ wire: 'wd-1a', lengthM: 900, count: 1 }],
    sets: [{ set: 'desk-bell', count: 2 }],
    cells: [{ cell: '6lr61', count: 3 }],
  },
}

test('two telephones, three batteries and 900 m of wire: both batteries in one leg, and why', async () => {
  const { code, out } = await run(TWO)
  expect(code).toBe(0)
  const { nets, missing } = JSON.parse(out)
  expect(missing).toEqual([])
  // 700 m on the map, a fifth of slack on the ground and 8 m at each end: PLAN-FORMAT, section 1.
  expect(nets[0]).toMatchObject({ verdict: 'works', worst: 'works', splices: 0 })
  expect(nets[0].wireM).toBeCloseTo(700 * 1.2 + 16, 1)
  expect(nets[0].leftM).toBeCloseTo(900 - 856, 1)
  expect(nets[0].plan.plan).toMatchObject({
    format: 'fieldpair-plan',
    stock: [{ wire: 'wd-1a', lengthM: 900, count: 1 }],
  })
  expect(nets[0].plan.plan.catalog.supplies).toMatchObject([{ kind: 'series', cell: '6lr61', volts: 27 }])
  expect(nets[0].why).toContain('Agree on times to lift')
})

test('over a terrain the ways are those of the ground, and the report over that terrain says the same', async () => {
  // Three stations of the demo, over its own hills.
  const shelf = {
    places: [
      { id: 'camp', lon: 67.0214, lat: 48.614 },
      { id: 'cairn', lon: 66.99, lat: 48.626 },
      { id: 'weir', lon: 67.0555, lat: 48.6009 },
    ],
    have: {
      wires: [{ wire: 'wd-1a', lengthM: 1609, count: 8 }],
      sets: [{ set: 'crank-1600', count: 3 }],
    },
  }
  const files = new Map([['shelf', JSON.stringify(shelf)]])
  const printed = { out: '' }
  const io = {
    readBytes: async (path: string) =>
      new Uint8Array(files.has(path) ? Buffer.from(files.get(path)!) : readFileSync(path)),
    write: async () => {},
    out: (text: string) => {
      printed.out += text
    },
    err: (text: string) => {
      throw new Error(text)
    },
  }
  const terrain = ['--terrain', 'public/demo.terrain.tif']
  expect(await runShelf(['shelf', ...terrain], io)).toBe(0)
  const [net] = JSON.parse(printed.out).nets
  printed.out = ''
  expect(await runShelf(['shelf'], io)).toBe(0)
  const [flat] = JSON.parse(printed.out).nets
  expect(net.wireM).toBeGreaterThan(flat.wireM)
  files.set('plan', JSON.stringify(net.plan))
  printed.out = ''
  expect(await runReport(['plan', ...terrain], io)).toBe(0)
  const report = JSON.parse(printed.out)
  const wireM = report.lines.reduce((sum: number, line: { wireM: number }) => sum + line.wireM, 0)
  expect(wireM).toBeCloseTo(net.wireM, 6)
  expect([report.circuits[0].verdict, report.circuits[0].worst.verdict]).toEqual([net.verdict, net.worst])
})

test('what is lacking is told where no net can be made', async () => {
  const { out } = await run({
    ...TWO,
    have: { wires: [{ wire: 'wd-1a', lengthM: 400, count: 1 }], sets: [{ set: 'desk-bell', count: 1 }] },
  })
  const answer = JSON.parse(out)
  expect(answer.nets).toEqual([])
  // 856 m are needed and 400 are there; told to ten metres, with room for a splice.
  expect(answer.missing).toEqual(['One more telephone.', '460 m more of Field wire WD-1A/TT.'])
})

test.each([
  ['{', /line 1, column 2/],
  [[], /file: This is no shelf/],
  [{ ...TWO, places: [{ name: 'Camp' }] }, /^places: The list of places has 1 entry: give at least 2\./],
  [
    { ...TWO, have: { wires: [{ wire: 'no-such', lengthM: -4 }] } },
    /have\.wires\[0\]\.wire: .*no such wire[\s\S]*have\.wires\[0\]\.lengthM: /,
  ],
  [{ ...TWO, have: { sets: [{ set: 'desk-bell', count: 1.5 }] } }, /have\.sets\[0\]\.count: .*whole number/],
  [{ ...TWO, have: { cells: [{ cell: 'desk-bell', count: 1 }] } }, /have\.cells\[0\]\.cell: .*no such cell/],
  [
    {
      ...TWO,
      distancesM: [
        [0, 700],
        [701, 0],
      ],
    },
    /distancesM\[0\]\[1\]: .*same both ways/,
  ],
  [{ ...TWO, distancesM: [[0, 700]] }, /distancesM: .*give one for each place/],
  [
    {
      ...TWO,
      distancesM: [
        [0, 0],
        [0, 0],
      ],
    },
    /distancesM\[0\]\[1\]: .*is 0/,
  ],
  [
    {
      ...TWO,
      distancesM: [
        [5, 700],
        [700, 0],
      ],
    },
    /distancesM\[0\]\[0\]: .*itself/,
  ],
  [{ ...TWO, distancesM: undefined }, /places\[0\]\.lon: .*places\[1\]\.lon: /s],
  [
    {
      ...TWO,
      places: [
        { id: 'a', lon: 200, lat: 1 },
        { id: 'a', lon: 2, lat: 1 },
      ],
    },
    /places\[0\]\.lon[\s\S]*places\[1\]\.id/,
  ],
  [{ ...TWO, talk: [['Camp', 'Mill']] }, /talk\[0\]\[1\]: .*no such place/],
  [{ ...TWO, talk: [['Camp', 'Camp']] }, /talk\[0\]: .*itself/],
  [{ ...TWO, agree: [['Camp', 'Mill']] }, /agree\[0\]\[1\]: .*no such place/],
  [{ ...TWO, talk: 'some' }, /talk: /],
  [{ ...TWO, catalog: { wires: [{ id: 'own' }] } }, /catalog\.wires\[0\]\.loopOhmPerKm/],
])('refuses %j with its places', async (content, fault) => {
  const { code, out, err } = await run(content)
  expect(code).toBe(2)
  expect(out).toBe('')
  expect(err).toMatch(fault)
})

test('refuses a command line that names no shelf, two, or one that is not there', async () => {
  expect(await run(TWO, '--x')).toMatchObject({ code: 2, out: '' })
  expect(await run(TWO, 'shelf', 'other')).toMatchObject({ code: 2, out: '' })
  expect(await run(TWO, 'other')).toMatchObject({
    code: 2,
    out: '',
    err: expect.stringContaining('cannot be read'),
  })
})

test('a wire, a set and a supply of the shelf’s own come into the plan', async () => {
  const wire = {
    id: 'fence',
    name: 'Fence',
    loopOhmPerKm: 90,
    tempCoeffPerC: 0.004,
    nanoFPerKm: 6,
    loopMilliHPerKm: 2,
    dryMicroSPerKm: 5,
    wetMicroSPerKm: 100,
    kgPerKm: 60,
  }
  const { out } = await run({
    ...TWO,
    have: { wires: [{ wire: 'fence', lengthM: 900, count: 1 }], sets: [{ set: 'crank-1600', count: 2 }] },
    catalog: { wires: [wire] },
  })
  const { nets } = JSON.parse(out)
  expect(nets[0]).toMatchObject({ verdict: 'works' })
  expect(nets[0].plan.plan.catalog.wires).toMatchObject([wire])
})
