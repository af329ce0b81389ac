import type { Plan } from '../plan/plan'
import type { Country } from '../shelf/country'
import { barePlan } from '../shelf/net-plan'
import type { PlannedNet, ShelfAnswer } from '../shelf/shelf-answer'
import { gainSentence, netTitle, searchSentence, wantSentence, whySentence } from './shelf-words'
import { tongueOf } from './tongue'
import type { UnitSystem } from './units'

/** A net as it is printed and shown: PLAN-FORMAT, section 5, and a name for it. */
export function netInWords<P>(
  net: PlannedNet,
  country: Country,
  fileOf: (plan: Plan) => P,
  system: UnitSystem = 'metric',
) {
  const say = tongueOf(net.plan, system)
  return {
    plan: fileOf(net.plan),
    verdict: net.judged.verdict,
    worst: net.judged.worst,
    wireM: net.wireM,
    leftM: net.leftM,
    splices: net.splices,
    title: netTitle(net, country, say),
    why: whySentence(net, country, say),
  }
}

/** What is told of a shelf: its nets, what is lacking, and besides what one thing more would bring and how the search went. */
export function answerInWords<P>(
  answer: ShelfAnswer,
  fileOf: (plan: Plan) => P,
  system: UnitSystem = 'metric',
) {
  const { country, nets, wants, gains, search } = answer
  const { shelf } = country
  const say = tongueOf(barePlan(country), system)
  return {
    nets: nets.map((net) => netInWords(net, country, fileOf, system)),
    missing: wants.map((want) => wantSentence(want, shelf, say)),
    more: nets[0] ? gains.map((gain) => gainSentence(gain, nets[0]!, shelf, say)) : [],
    search: {
      whole: search.isWhole,
      best: search.isBest,
      circuits: search.judged,
      leastWireM: search.leastWireM,
      says: searchSentence(answer, say),
    },
  }
}
