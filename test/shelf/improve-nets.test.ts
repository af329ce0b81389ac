import { expect, test } from 'vitest'
import { shelfOf } from '../../src/files/parse-shelf'
import { bestSoFar } from '../../src/shelf/best-so-far'
import { countryOf } from '../../src/shelf/country'
import { everyNet } from '../../src/shelf/every-net'
import { improve } from '../../src/shelf/improve-nets'
import { judgeOf } from '../../src/shelf/judge-net'
import type { NetDesign } from '../../src/shelf/net-design'
import { candidate, compareRanks, rankOf } from '../../src/shelf/rank-nets'
import { cases } from '../cases'
import { randomShelf } from './random-shelf'

const SHELVES = cases(5)
/** Shelves of more nets are left out: each net is judged. */
const MOST_NETS = 2500

/** What the search for large shelves finds of small ones, where every net can be looked at. */
test('from many beginnings the best verdict of a small shelf is found every time, and nearly always the best net', {
  timeout: 300_000,
}, () => {
  const tally = { shelves: 0, verdict: 0, best: 0 }
  for (let seed = 1; seed <= SHELVES; seed++) {
    const places = 2 + (seed % 3)
    const shelf = shelfOf(
      randomShelf(7000 + seed, { places, things: places + 5, spreadM: [400, 2000, 7000][seed % 3]! }),
    )
    if (!shelf.ok) throw new Error(JSON.stringify(shelf.problems))
    const country = countryOf(shelf.value)
    let nets = 0
    for (const _ of everyNet(country)!) if (++nets > MOST_NETS) break
    if (nets > MOST_NETS) continue
    const judge = judgeOf(country)
    const look = (best: ReturnType<typeof bestSoFar>) => (design: NetDesign) => {
      const found = candidate(country, design, judge.net(design))
      best.take(found)
      return found
    }
    const [all, found] = [bestSoFar(country), bestSoFar(country)]
    const see = look(all)
    for (const design of everyNet(country)!) see(design)
    const fresh = judgeOf(country)
    const seek = look(found)
    improve(country, { judge: fresh, look: seek, isStopped: () => false, isBest: () => false, effort: 0.1 })
    const [truth, ours] = [all.best(), found.best()]
    if (!truth || rankOf(truth)[0]! < 0) continue
    tally.shelves++
    const [best, rank] = [rankOf(truth), rankOf(ours!)]
    if (rank.slice(0, 4).every((each, k) => each === best[k])) tally.verdict++
    if (compareRanks(rank.slice(0, 7), best.slice(0, 7)) >= 0) tally.best++
  }
  console.info('local search against every net:', tally)
  expect(tally.shelves).toBeGreaterThan(SHELVES / 3)
  expect(tally.verdict).toBe(tally.shelves)
  expect(tally.best / tally.shelves).toBeGreaterThanOrEqual(0.9)
})
