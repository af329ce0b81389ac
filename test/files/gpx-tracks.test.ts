import { expect, test } from 'vitest'
import { trackOfLine } from '../../src/field/track-of-line'
import { readGpxTracks } from '../../src/files/places/gpx-tracks'
import { measureLine } from '../../src/measure/measure-line'
import type { LineId } from '../../src/plan/id'
import { fieldPlan } from '../field/field-plan'

const gpx = (body: string) =>
  new TextEncoder().encode(
    `<?xml version="1.0" encoding="UTF-8"?><gpx version="1.1" creator="handheld" xmlns="http://www.topografix.com/GPX/1/1">${body}</gpx>`,
  )
const point = (lon: number, lat: number, more = '') => `<trkpt lat="${lat}" lon="${lon}">${more}</trkpt>`

test('a track comes with its elevations and times, its segments one after the other', () => {
  const first = point(0, 0.0001, '<ele>512.5</ele><time>2026-11-25T10:12:00Z</time>')
  const body = `<trk><trkseg>${first}${point(0.0004, 0.001)}</trkseg><trkseg>${point(0.0009, 0, '<time>soon</time>')}</trkseg></trk>`
  const read = readGpxTracks(gpx(`<wpt lat="1" lon="1"><ele>3</ele></wpt>${body}`))
  expect(read).toEqual({
    ok: true,
    value: [
      [
        [0, 0.0001, 512.5, '2026-11-25T10:12:00Z'],
        [0.0004, 0.001, null, null],
        [0.0009, 0, null, null],
      ],
    ],
  })
})

test('what is no track is refused with a sentence', () => {
  for (const bytes of [
    gpx(''),
    gpx('<wpt lat="1" lon="1"/>'),
    new TextEncoder().encode('<kml></kml>'),
    gpx(`<trk><trkseg>${point(0, 95)}${point(0, 1)}</trkseg></trk>`),
  ])
    expect(readGpxTracks(bytes)).toMatchObject({ ok: false })
})

test('of several tracks the one near the line is taken, and none that lies elsewhere', () => {
  const plan = fieldPlan([{ id: 'l1', from: 'a', to: 'b', wireM: 300 }])
  const line = plan.lines.get('l1' as LineId)!
  const track = (off: number) =>
    [
      [0, off],
      [0.0009, off],
    ] as const
  const near = track(0.0004)
  expect(trackOfLine(plan, line, measureLine(plan, line), [track(0.003), near])).toEqual({
    ok: true,
    value: near,
  })
  expect(trackOfLine(plan, line, measureLine(plan, line), [track(0.1)])).toMatchObject({
    ok: false,
    problems: [{ code: 'far-track' }],
  })
})
