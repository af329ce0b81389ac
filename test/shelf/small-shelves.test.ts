import { expect, test } from 'vitest'
import { shelfOf } from '../../src/files/parse-shelf'
import type { LaidNet } from '../../src/shelf/best-so-far'
import { countryOf } from '../../src/shelf/country'
import { findNets } from '../../src/shelf/find-nets'
import { jointsOf, runOf } from '../../src/shelf/net-design'
import { barePlan } from '../../src/shelf/net-plan'
import { compareRanks, isGood } from '../../src/shelf/rank-nets'
import { ALL, cases } from '../cases'
import { bestByHand } from './every-net-oracle'
import { randomShelf } from './random-shelf'

const read = (value: unknown) => {
  const shelf = shelfOf(value)
  if (!shelf.ok) throw new Error(JSON.stringify(shelf.problems))
  return shelf.value
}

/** Up to four places and six things, as every net of such a shelf can be put together by hand. */
test.each([
  { places: 2, things: 6, cases: cases(6) },
  { places: 3, things: 6, cases: cases(4) },
  { places: 4, things: 5, cases: cases(2) },
  // Some thousands of nets by hand.
  ...(ALL ? [{ places: 4, things: 6, cases: cases(6) }] : []),
])(
  'the first net of $cases shelves of $places places and $things things is the best of all',
  {
    timeout: 300_000,
  },
  ({ places, things, cases: shelves }) => {
    const tally = { shelves: 0, nets: 0, none: 0, joined: 0, exact: 0 }
    for (let seed = 1; seed <= shelves; seed++) {
      const value = randomShelf(1000 * places + seed, {
        places,
        things,
        spreadM: seed % 3 === 0 ? 9000 : 900,
      })
      const shelf = read(value)
      const country = countryOf(shelf)
      const { nets, search } = findNets(country)
      const truth = bestByHand(shelf, barePlan(country), (a, b) => country.way(a, b).bends)
      tally.shelves++
      tally.nets += truth.nets
      expect(search.isWhole, `shelf ${seed}: so small a shelf is looked through`).toBe(true)
      const isJoined = ({ design }: LaidNet) =>
        design.some(
          (circuit) =>
            jointsOf(circuit).length > 0 || circuit.edges.some((each) => runOf(country, each).length > 1),
        )
      const rankedOf = (net: LaidNet | undefined) => (net && isGood(net) ? net.rank.slice(0, 7) : undefined)
      const [first] = nets
      if (first && isJoined(first)) {
        // With a joint more can be made than by hand here; never less.
        tally.joined++
        if (truth.rank) expect(compareRanks(rankedOf(first) ?? [-1], truth.rank)).toBeGreaterThanOrEqual(0)
      }
      const found = rankedOf(nets.find((net) => !isJoined(net)))
      if (found === undefined && first && isJoined(first)) continue
      expect(found, `shelf ${seed}: ${JSON.stringify(value)}`).toEqual(truth.rank)
      if (truth.rank) tally.exact++
      else tally.none++
    }
    console.info('small shelves against every net:', tally)
    expect(tally.exact).toBeGreaterThanOrEqual(shelves / 5)
  },
)
