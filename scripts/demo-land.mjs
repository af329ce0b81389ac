/** The invented country of the demo plan. Places in metres east and north of the camp; nothing here is a real place. */

const ORIGIN = { lonDeg: 67.0214, latDeg: 48.6137 }

const METRES_PER_DEG_LAT = 111_200
const METRES_PER_DEG_LON = 111_320 * Math.cos((ORIGIN.latDeg * Math.PI) / 180)

/**
 * Numbers from 0 to 1, the same ones for the same seed (mulberry32).
 *
 * @param {number} seed
 */
export function seeded(seed) {
  let state = seed
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32
  }
}

/**
 * @param {number} eastM
 * @param {number} northM
 * @returns {[number, number]} longitude and latitude, to about 0.1 m
 */
export const positionAt = (eastM, northM) => [
  round(ORIGIN.lonDeg + eastM / METRES_PER_DEG_LON),
  round(ORIGIN.latDeg + northM / METRES_PER_DEG_LAT),
]

const round = (/** @type {number} */ deg) => Math.round(deg * 1e6) / 1e6

/** How far north of the camp the stream runs at so many metres east of it. */
export const streamNorthM = (/** @type {number} */ eastM) =>
  -1350 - 0.12 * eastM + 210 * Math.sin(eastM / 880) + 70 * Math.sin(eastM / 310 + 1)

const HILLS = [
  { eastM: -3400, northM: 2500, heightM: 165, widthM: 1000 },
  { eastM: -1900, northM: 2900, heightM: 80, widthM: 1300 },
  { eastM: 1100, northM: 2500, heightM: 95, widthM: 900 },
  { eastM: 2900, northM: 900, heightM: 60, widthM: 1100 },
  { eastM: -2200, northM: -2600, heightM: 70, widthM: 1000 },
  { eastM: 1500, northM: -3000, heightM: 85, widthM: 1200 },
]

const random = seeded(1897)
const RIPPLES = Array.from({ length: 14 }, (_, i) => {
  const waveM = 2600 / (1 + i * 0.55)
  const turn = random() * Math.PI
  return {
    east: Math.cos(turn) / waveM,
    north: Math.sin(turn) / waveM,
    phase: random() * 7,
    heightM: waveM / 300,
  }
})

/**
 * Height of the invented ground, m: a valley with its stream, hills, and smaller folds.
 *
 * @param {number} eastM
 * @param {number} northM
 */
export function heightM(eastM, northM) {
  const fromStreamM = northM - streamNorthM(eastM)
  const valley = 70 * (1 - Math.exp(-((fromStreamM / 1100) ** 2)))
  const hills = HILLS.map((hill) => {
    const distance2 = (eastM - hill.eastM) ** 2 + (northM - hill.northM) ** 2
    return hill.heightM * Math.exp(-distance2 / hill.widthM ** 2)
  })
  const folds = RIPPLES.map((wave) => {
    const angle = 2 * Math.PI * (eastM * wave.east + northM * wave.north) + wave.phase
    // The stream's own ground stays smooth, so that it runs downhill.
    return wave.heightM * Math.sin(angle) * Math.min(1, Math.abs(fromStreamM) / 600)
  })
  return 418 - eastM / 250 + valley + sum(hills) + sum(folds)
}

const sum = (/** @type {number[]} */ values) => values.reduce((total, value) => total + value, 0)
