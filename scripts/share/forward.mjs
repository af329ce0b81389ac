import { baseOf, Refused } from './base.mjs'
import { carry, pause } from './carry.mjs'
import { copyOf } from './copy-of-plan.mjs'
import { placesIn } from './places.mjs'
import { relayPresence } from './presence-relay.mjs'
import { Turns } from './turns.mjs'

/** A base has 200 lines for one visitor, who may be more than this box. */
const MOST_LINES = 100
/** Where more plans than that want a line, one that has nothing to carry gives its own away after so long, the first time sooner, ms. */
const HOLD_MS = 60_000
const IDLE_MS = 3000
/** After a line that broke the next try waits so long, and twice as long each time, up to the second; after a no, the third, ms. */
const [AGAIN_MS, LONGEST_MS, REFUSED_MS] = [1000, 30_000, 120_000]
const HERE_FULL = 'This box has no more room for it.'
const BASE_FULL = 'The base has no more room for it.'
/** What several plans have in common is told at once, ms. */
const TELL_MS = 2000

/**
 * Makes this box the leaf of a base: each plan here is carried both ways as long as the base is reached, over lines such as a page has. Who is
 * where goes along.
 *
 * @param {object} wish
 * @param {readonly string[]} wish.addresses of the base
 * @param {string} wish.folder of this box
 * @param {import('@nats-io/nats-core').NatsConnection} wish.connection to this box's own nats-server
 * @param {readonly import('./box-config.mjs').SharedPlan[]} wish.plans
 * @param {(sentence: string) => void} wish.tell
 * @param {number} [wish.mostLines]
 */
export function startForwarding({ addresses, folder, connection, plans, tell, mostLines = MOST_LINES }) {
  const ending = new AbortController()
  const until = ending.signal
  const places = placesIn(folder)
  const base = baseOf(addresses, tell, until)
  const turns = new Turns(mostLines)
  /** @type {Map<string, AbortController>} */
  const known = new Map()
  /** Plans that the base has had while this box ran. */
  const there = new Set()
  /** @type {Map<string, string>} */
  const refused = new Map()
  /** @type {NodeJS.Timeout | undefined} */
  let telling
  let told = ''
  // A plan that is changed here need not wait for its turn among many.
  const news = connection.subscribe('plan.>', {
    callback: (_, message) => turns.hurry(message.subject.split('.')[1] ?? ''),
  })

  function tellRefused() {
    telling = undefined
    const whys = [...refused.values()]
    const sentence = [...new Set(whys)]
      .map((why) => `${whys.filter((each) => each === why).length} of the plans stay apart for now: ${why}`)
      .join(' ')
    if (sentence !== told && sentence) tell(sentence)
    told = sentence
  }
  /**
   * @param {string} name of a plan, or of a way that it goes
   * @param {string} [why]
   */
  function note(name, why) {
    if (refused.get(name) === why) return
    if (why) refused.set(name, why)
    else refused.delete(name)
    telling ??= setTimeout(tellRefused, TELL_MS)
  }

  /**
   * @param {import('./box-config.mjs').SharedPlan} plan
   * @param {AbortSignal} stop
   */
  async function keepUp(plan, stop) {
    let holdMs = 0
    for (let fails = 0; !stop.aborted; ) {
      let wait = Math.min(AGAIN_MS * 2 ** fails, LONGEST_MS) * (0.75 + Math.random() / 2)
      await turns.take(plan.tag)
      try {
        await base.reached()
        if (!stop.aborted) await session(plan, stop, holdMs, () => (fails = 0))
        holdMs = HOLD_MS
        wait = 0
      } catch (error) {
        fails = Math.min(fails + 1, 10)
        if (error instanceof Refused) {
          note(plan.tag, error.message)
          wait = REFUSED_MS
        }
      } finally {
        turns.give()
      }
      await pause(wait, stop)
    }
  }

  /**
   * A line for a plan, until it breaks, or another wants it and this one has nothing to do.
   *
   * @param {import('./box-config.mjs').SharedPlan} plan
   * @param {AbortSignal} stop
   * @param {number} holdMs
   * @param {() => void} onUp
   */
  async function session(plan, stop, holdMs, onUp) {
    const line = await lineOf(plan)
    const ended = new AbortController()
    const end = () => ended.abort()
    stop.addEventListener('abort', end)
    let [begun, lastNews] = [Date.now(), Date.now()]
    try {
      const [own, others] = await Promise.all([
        copyOf(connection, plan.tag),
        copyOf(line.connection, plan.tag),
      ])
      onUp()
      there.add(plan.tag)
      note(plan.tag)
      const wayOf = (/** @type {string} */ way, /** @type {string} */ full) => ({
        place: placeOf(`${plan.tag} ${way}`),
        until: ended.signal,
        onNews: () => {
          lastNews = Date.now()
        },
        onFull: (/** @type {boolean} */ isFull) => note(`${plan.tag} ${way}`, isFull ? full : undefined),
      })
      const ways = [carry({ ...wayOf('down', HERE_FULL), from: others, to: own, onSent: () => {} })]
      // Whoever only reads has nothing to bring.
      if (plan.write)
        ways.push(carry({ ...wayOf('up', BASE_FULL), from: own, to: others, onSent: base.onSent }))
      relayPresence(own, others, ended.signal, base.isBusy)
      relayPresence(others, own, ended.signal, () => false)
      const giveWay = async () => {
        while (!ended.signal.aborted) {
          await pause(1000, ended.signal)
          const isIdle = Date.now() - lastNews > IDLE_MS && Date.now() - begun > holdMs
          if (turns.isWanted && isIdle) return
        }
      }
      const broken = line.connection.closed().then(() => {
        if (!ended.signal.aborted) throw new Error('the line broke')
      })
      await Promise.race([...ways, broken, giveWay()])
    } finally {
      stop.removeEventListener('abort', end)
      end()
      line.drop()
    }
  }
  /** @param {string} name */
  const placeOf = (name) => ({
    get: () => places.get(name),
    set: (/** @type {import('./places.mjs').Place} */ place) => places.set(name, place),
  })

  /** @param {import('./box-config.mjs').SharedPlan} plan */
  async function lineOf(plan) {
    try {
      return await base.line(plan)
    } catch (error) {
      const isNo = error instanceof Error && error.name === 'AuthorizationError'
      // A link that breaks at once swallows the reason.
      if (!isNo && (there.has(plan.tag) || !plan.write)) throw error
      await base.register(plan)
      return await base.line(plan)
    }
  }

  /** @param {import('./box-config.mjs').SharedPlan} plan */
  function add(plan) {
    known.get(plan.tag)?.abort()
    const stop = new AbortController()
    known.set(plan.tag, stop)
    void keepUp(plan, stop.signal)
  }
  for (const plan of plans) add(plan)
  return {
    add,
    stop: () => {
      ending.abort()
      for (const stop of known.values()) stop.abort()
      clearTimeout(telling)
      news.unsubscribe()
      places.keep()
    },
  }
}
