import { closeSync, ftruncateSync, mkdtempSync, openSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { zipSync } from 'fflate'
import type { CDPSession, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { todays } from '../cases'
import { toolsAreThere, type Visit, visit } from './visit'

/** A file that ends in a sentence takes no more of a processor than this many times the yardstick below, and no more memory, MB. */
const MOST_YARDS = 2
const MOST_MB = 500
/** The page is frozen for no longer than this part of the yardstick: a fifth of a second on a machine that does it in one. */
const MOST_FROZEN = 0.2

let at: Visit
let cdp: CDPSession
const folder = mkdtempSync(join(tmpdir(), 'hostile-'))
beforeAll(async () => {
  at = await visit()
  await toolsAreThere(at.page)
  cdp = await at.context.browser()!.newBrowserCDPSession()
})
afterAll(async () => {
  rmSync(folder, { recursive: true })
  await at?.close()
})

const gpx = (inner: string) => `<?xml version="1.0"?><gpx version="1.1">${inner}</gpx>`
const features = (type: string, coordinates: string) =>
  `{"type":"FeatureCollection","features":[{"type":"Feature","properties":{},"geometry":{"type":"${type}","coordinates":[${coordinates}]}}]}`

/** An archive whose headers say that it unpacks to a kilobyte. */
function lying(archive: Uint8Array): Uint8Array {
  const view = new DataView(archive.buffer, archive.byteOffset)
  // Local header and central directory: PKWARE APPNOTE 6.3, 4.3.7 and 4.3.12.
  for (let i = 0; i < archive.length - 30; i++) {
    const mark = view.getUint32(i, true)
    if (mark === 0x04034b50) view.setUint32(i + 22, 1000, true)
    if (mark === 0x02014b50) view.setUint32(i + 24, 1000, true)
  }
  return archive
}
const zipped = (name: string, bytes: number) => zipSync({ [name]: new Uint8Array(bytes) })
const laughs = Array.from(
  { length: 30 },
  (_, i) => `<!ENTITY a${i} "${i === 0 ? 'ha' : `&a${i - 1};`.repeat(10)}">`,
).join('')

type Hostile = readonly [name: string, content: () => string | Uint8Array | number, said: RegExp]

/** Files that are hostile in one way each: by name, what is in it, or how many zeros, and what the page says of it. */
const WAYS: readonly (readonly Hostile[])[] = [
  [
    ['laughs.gpx', () => `<?xml version="1.0"?><!DOCTYPE gpx [${laughs}]><gpx>&a29;</gpx>`, /document type/],
    [
      'quadratic.kml',
      () => `<!DOCTYPE k [<!ENTITY a "${'x'.repeat(1e5)}">]><kml>${'&a;'.repeat(1e5)}</kml>`,
      /document type/,
    ],
  ],
  [
    ['false.kmz', () => lying(zipped('doc.kml', 60e6)), /unpacks to more/],
    ['true.kmz', () => zipped('doc.kml', 60e6), /unpacks to more/],
    ['false.everything.zip', () => lying(zipped('everything.json', 60e6)), /unpacks to more/],
  ],
  [
    ['two-gigabytes.gpx', () => 2e9, /larger than 32 MB/],
    ['two-gigabytes.geojson', () => 2e9, /2,000 MB/],
    ['two-gigabytes.mbtiles', () => 2e9, /no database/],
  ],
  [
    ['million.gpx', () => gpx('<wpt lat="47" lon="11"/>'.repeat(1e6)), /more than 250,000 points/],
    ['hundred.geojson', () => features('MultiPoint', '[11.1,47.2],'.repeat(5e6)), /60,000,\d+ characters/],
    [
      'million.kml',
      () =>
        `<kml><Placemark><LineString><coordinates>${'1,2 '.repeat(1e6)}</coordinates></LineString></Placemark></kml>`,
      /more than 250,000 points/,
    ],
    ['million.csv', () => `name,lat,lon\n${'a,47.1,11.2\n'.repeat(1e6)}`, /more than 250,000 points/],
    [
      'million.geojson',
      () => features('LineString', `${'[1,2],[3,4],'.repeat(5e5)}[1,2]`),
      /1,000,001 corners/,
    ],
  ],
  [
    ['deep.geojson', () => '['.repeat(5e6), /nested deeper/],
    ...['gpx', 'kmz', 'geojson', 'pmtiles', 'tif', 'everything.zip'].map(
      (ending): Hostile => [`zeros.${ending}`, () => 20e6, /./],
    ),
  ],
  [
    ['off.gpx', () => gpx('<wpt lat="95" lon="9"/>'), /off the globe/],
    ['off.csv', () => 'name,lat,lon\nx,95,9\n', /off the globe/],
    ['half.csv', () => Buffer.from('name,lat,lon\nx,47,9\n', 'utf16le'), /save it as UTF-8/],
    ['latin.csv', () => Buffer.from('name,lat,lon\ncaf\xe9,47,9\n', 'latin1'), /save it as UTF-8/],
    ['odd.gpx', () => '<?xml version="1.0" encoding="klingon"?><gpx/>', /save the file as UTF-8/],
    ['not.kmz', () => 'PK no archive', /./],
  ],
]
/** Of each way one file a day. */
const FILES = WAYS.flatMap((way) => todays(way, way.length))

function put(name: string, content: string | Uint8Array | number): string {
  const path = join(folder, name)
  if (typeof content !== 'number') writeFileSync(path, content)
  else {
    const file = openSync(path, 'w')
    ftruncateSync(file, content)
    closeSync(file)
  }
  return path
}

async function open(page: Page, path: string) {
  await page.getByRole('button', { name: 'Plans', exact: true }).click()
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: 'Open a file…', exact: true }).click(),
  ])
  await chooser.setFiles(path)
}

interface Process {
  readonly type: string
  readonly id: number
  readonly cpuTime: number
}
const renderers = async (): Promise<readonly Process[]> =>
  (await cdp.send('SystemInfo.getProcessInfo')).processInfo.filter(({ type }: Process) => type === 'renderer')
const cpuOf = (all: readonly Process[]) => all.reduce((sum, { cpuTime }) => sum + cpuTime, 0)
/** What lies in memory of the process that has the most, MB. Only Linux tells it so. */
const memoryMB = (all: readonly Process[]) =>
  Math.max(
    ...all.map(({ id }) => {
      try {
        return Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${id}/status`, 'utf8'))?.[1]) / 1024
      } catch {
        return 0
      }
    }),
  )

/** Seconds of a processor for a fixed sum, which a quiet machine of 2024 does in one: a busy or slow one takes as much longer for all else. */
async function yardstick(page: Page): Promise<number> {
  const before = cpuOf(await renderers())
  await page.evaluate(() => {
    let sum = 0
    for (let i = 0; i < 3e8; i++) sum = (sum * 31 + i) | 0
    return sum
  })
  return cpuOf(await renderers()) - before
}

test('each hostile file ends in a sentence, soon and in little memory, and never freezes the page', async () => {
  const { page } = at
  const yardS = await yardstick(page)
  await page.evaluate(() => {
    Object.assign(window, { longest: 0 })
    const watch = window as unknown as { longest: number }
    new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) watch.longest = Math.max(watch.longest, duration)
    }).observe({ type: 'longtask' })
  })
  const figures: string[] = []
  const amiss: string[] = []
  for (const [name, content, said] of FILES) {
    const path = put(name, content())
    await page.evaluate(() => Object.assign(window, { longest: 0 }))
    const before = await renderers()
    const baseMB = memoryMB(before)
    let peakMB = baseMB
    const timer = setInterval(() => {
      peakMB = Math.max(peakMB, memoryMB(before))
    }, 20)
    const started = performance.now()
    await open(page, path)
    const refusal = page.locator('dialog.problems')
    await refusal.waitFor()
    const tookS = (performance.now() - started) / 1000
    clearInterval(timer)
    expect.soft(await refusal.textContent(), name).toMatch(said)
    const cpuS = cpuOf(await renderers()) - cpuOf(before)
    const longestMs = await page.evaluate(() => (window as unknown as { longest: number }).longest)
    figures.push(
      `${name}: ${cpuS.toFixed(2)} s of a processor, ${tookS.toFixed(2)} s, frozen ${longestMs.toFixed(0)} ms, ${(peakMB - baseMB).toFixed(0)} MB`,
    )
    if (cpuS > MOST_YARDS * yardS || longestMs > 1000 * MOST_FROZEN * yardS || peakMB - baseMB > MOST_MB)
      amiss.push(figures.at(-1)!)
    rmSync(path)
    await refusal.getByRole('button', { name: 'Close' }).click()
    await refusal.waitFor({ state: 'detached' })
  }
  if (process.env.TELL) console.log(`yardstick ${yardS.toFixed(2)} s\n${figures.join('\n')}`)
  expect(amiss, `yardstick ${yardS.toFixed(2)} s`).toEqual([])
  expect(at.faults).toEqual([])
}, 120_000)

test('too many places for a plan are shown as a sentence, and a script in a name is a name', async () => {
  const { page } = at
  const many = Array.from({ length: 60_000 }, (_, i) => `<wpt lat="${47 + i / 1e5}" lon="11"/>`).join('')
  await open(page, put('many.gpx', gpx(many)))
  const dialog = page.locator('.carry')
  await dialog.getByText(/more than 5,000 stations, lines and hazards/).waitFor()
  expect(await dialog.getByRole('button', { name: 'Add to this plan' }).isDisabled()).toBe(true)
  await dialog.getByRole('button', { name: 'Add nothing' }).click()
  const folders = Array.from(
    { length: 5000 },
    (_, i) =>
      `<Folder><name>&lt;img src=x onerror=alert(${i})&gt;</name><Placemark><name>N</name><Point><coordinates>11,${47 + i / 1e4}</coordinates></Point></Placemark></Folder>`,
  ).join('')
  await open(page, put('folders.kml', `<kml><Document>${folders}</Document></kml>`))
  await dialog.getByText('<img src=x onerror=alert(0)>').waitFor()
  await dialog.getByText('4971 folders more').waitFor()
  await dialog.getByRole('button', { name: 'Add nothing' }).click()
  expect(at.faults).toEqual([])
}, 60_000)
