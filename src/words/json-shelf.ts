import type { Plan } from '../plan/plan'
import { barePlan } from '../shelf/net-plan'
import type { ShelfAnswer } from '../shelf/shelf-answer'
import { gainSentence, searchSentence, wantSentence, whySentence } from './shelf-words'
import { tongueOf } from './tongue'

/** What the command line prints of a shelf: PLAN-FORMAT, section 5, and besides what one thing more would bring and how the search went. */
export function answerInWords(answer: ShelfAnswer, fileOf: (plan: Plan) => unknown) {
  const { country, nets, wants, gains, search } = answer
  const any = tongueOf(barePlan(country), 'metric')
  return {
    nets: nets.map((net) => ({
      plan: fileOf(net.plan),
      verdict: net.judged.verdict,
      worst: net.judged.worst,
      wireM: net.wireM,
      leftM: net.leftM,
      splices: net.splices,
      why: whySentence(net, country, tongueOf(net.plan, 'metric')),
    })),
    missing: wants.map((want) => wantSentence(want, country.shelf, any)),
    more: nets[0] ? gains.map((gain) => gainSentence(gain, nets[0]!, country.shelf, any)) : [],
    search: {
      whole: search.isWhole,
      best: search.isBest,
      circuits: search.judged,
      leastWireM: search.leastWireM,
      says: searchSentence(answer, any),
    },
  }
}
