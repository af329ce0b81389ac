/** @import { Mutant } from './mutants.mjs' */

/** @type {(file: string, tests: readonly string[]) => (fault: string, from: string, to: string) => Mutant} */
const inFile = (file, tests) => (fault, from, to) => ({ fault, file: `src/${file}`, from, to, tests })

const leg = inFile('geo/leg-length.ts', ['test/geo'])
const along = inFile('measure/place-on-line.ts', ['test/measure'])
const line = inFile('measure/measure-line.ts', ['test/measure'])
const hanging = inFile('measure/catenary.ts', ['test/measure'])
const weight = inFile('measure/ice-and-wind.ts', ['test/measure'])
const spans = inFile('measure/overhead-spans.ts', ['test/measure'])
const ground = inFile('terrain/ground-from-grids.ts', ['test/terrain'])
const extent = inFile('terrain/grid-extent.ts', ['test/terrain'])
const cost = inFile('route/cost-grid.ts', ['test/route'])
const lays = inFile('route/route-lays.ts', ['test/route'])
const kinds = inFile('hazard/kinds.ts', ['test/hazard'])
const judge = inFile('hazard/judge-crossing.ts', ['test/hazard', 'test/report'])
const geotiff = inFile('files/geotiff-grid.ts', ['test/files/geotiff'])
const model = inFile('files/geotiff-crs.ts', ['test/files/geotiff'])
const tiles = inFile('files/elevation-tiles.ts', ['test/files/elevation-tiles'])
const hgt = inFile('files/hgt-grid.ts', ['test/files/hgt-grid'])
const far = inFile('report/far-shades.ts', ['test/report/far-shades'])
const ring = inFile('route/ring-apart.ts', ['test/route/near-routes'])
const places = inFile('report/best-places.ts', ['test/report/best-places'])
const field = inFile('route/wire-field.ts', ['test/report/far-shades'])
const crossings = inFile('hazard/crossings.ts', ['test/hazard'])

/** @type {readonly Mutant[]} */
export const GROUND = [
  leg('north taken for east', 'meridianM * Math.cos(middleRad)', 'primeVerticalM * Math.cos(middleRad)'),
  leg('the bearing turned the wrong way', 'startDeg + turnDeg', 'startDeg - turnDeg'),
  along('both tails at one end', '(measured.wireM - measured.laidM) / 2', 'measured.wireM - measured.laidM'),
  along('the first tail forgotten', 'wireM - tailM(measured))', 'wireM)'),
  line('one tail only', 'laidM + 2 * basis.allowances.tailM', 'laidM + basis.allowances.tailM'),
  line('slack on the map, not on the ground', 'laidM: groundM * slack * sag', 'laidM: mapM * slack * sag'),
  line('sag for every lay', "leg.lay === 'overhead' ? sagFactor", "leg.lay !== 'water' ? sagFactor"),
  hanging('heat tightens a wire', '(second.tempC - first.tempC)', '(first.tempC - second.tempC)'),
  spans('the hottest day is the coldest', 'Math.max(tempC, OVERHEAD.hotC)', 'Math.min(tempC, OVERHEAD.hotC)'),
  weight('grams taken for kilograms', '(wire.kgPerKm / 1000) * GRAVITY_M_S2', 'wire.kgPerKm * GRAVITY_M_S2'),
  extent(
    'half a cell lost at the edges of a grid',
    'const column = (columns * i) / EDGE - 0.5',
    'const column = (columns * i) / EDGE',
  ),
  ground(
    'the coarsest grid answers first',
    'sort((a, b) => a.cellM - b.cellM)',
    'sort((a, b) => b.cellM - a.cellM)',
  ),
  ground(
    'slopes only up',
    'const riseM = heightsM[i]! - heightsM[i - 1]!',
    'const riseM = Math.max(0, heightsM[i]! - heightsM[i - 1]!)',
  ),
  cost('descent is free', 'Math.abs(riseM) * grid.climb', 'Math.max(0, riseM) * grid.climb'),
  cost('tolls paid twice', 'grid.climb + tolls / 2', 'grid.climb + tolls'),
  kinds(
    'tolls of road and track swapped',
    "toll: { usual: 230, asks: 'Crossing a road' }",
    "toll: { usual: 140, asks: 'Crossing a road' }",
  ),
  judge(
    'the strength of both wires for that of one',
    'isWeak: breakN / 2 < railBreakN',
    'isWeak: breakN < railBreakN',
  ),
  lays('a crossing buried on one side only', 'distanceM + insideM + sideM)', 'distanceM + insideM)'),
  geotiff('a point taken for an area', 'keys?.GTRasterTypeGeoKey === 2', 'keys?.GTRasterTypeGeoKey !== 2'),
  geotiff(
    'the unit of an offset',
    'offsetM: number(metadata?.OFFSET, 0) * unitM',
    'offsetM: number(metadata?.OFFSET, 0)',
  ),
  geotiff('half a cell of a reduced copy', '(byColumns - 1) / 2, (byRows - 1) / 2', '0, 0'),
  model(
    'a tie point off the corner',
    'x0: tiePoint[3]! - tiePoint[0]! * dx',
    'x0: tiePoint[3]! + tiePoint[0]! * dx',
  ),
  model('a tie point above the corner', 'y0: tiePoint[4]! - tiePoint[1]! * dy', 'y0: tiePoint[4]!'),
  tiles('half a cell of shift in tiles', '(west * TILE_CELLS + 0.5) * cellM', 'west * TILE_CELLS * cellM'),
  tiles(
    'south taken for north',
    'WORLD_M / 2 - (north * TILE_CELLS + 0.5) * cellM',
    'WORLD_M / 2 - (south * TILE_CELLS + 0.5) * cellM',
  ),
  hgt('the corner of the wrong side', 'y0: latDeg + 1,', 'y0: latDeg,'),
  crossings(
    'inside and outside of an area',
    '|| !isInside((start + end) / 2)',
    '|| isInside((start + end) / 2)',
  ),
  crossings(
    'an angle measured to the line’s normal',
    'radToDeg(Math.asin(Math.min(1, sine)))',
    'radToDeg(Math.acos(Math.min(1, sine)))',
  ),
  far('a shade told without the tails', '- laidM - 2 * plan.allowances.tailM', '- laidM'),
  far('a shade told without slack', 'wireM / ((1 + allowances.slackPct[lay] / 100) * sag)', 'wireM / sag'),
  field(
    'a shade that goes through keep-out areas',
    'if (!isFree) return Infinity',
    'if (!isFree) isFree = true',
  ),
  ring(
    'a ring that shares a stretch and says nothing',
    'return parts.map((part) => ({ links: [i, j], ...part }))',
    'return parts.slice(1).map((part) => ({ links: [i, j], ...part }))',
  ),
  places(
    'the worst place told as the best',
    'b.worstNepers - a.worstNepers ||',
    'a.worstNepers - b.worstNepers ||',
  ),
]
