import { chmodSync, existsSync, mkdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { syncsItself } from './sync-disk.mjs'
import { writeWhole } from './whole-file.mjs'

/** What one message may weigh, and what one plan may take of the disk, bytes. */
export const MOST_BYTES = { message: 8 * 1024 * 1024, plan: 512 * 1024 * 1024 }
/** So many plans one box takes. */
export const MOST_PLANS = 10_000
/** nats-server sets aside for each stream all that it may ever take: what there really is of the disk the box watches itself. */
const SET_ASIDE = MOST_PLANS * MOST_BYTES.plan

/**
 * @typedef {object} SharedPlan
 * @property {string} tag
 * @property {string} read what whoever reads must say
 * @property {string} [write] what whoever writes must say; absent where only somebody who reads has brought the plan from the base
 */

/**
 * The plans that a box holds, as a file in its folder: it knows of each no more than a tag by chance and two words to be let in.
 *
 * @param {string} folder
 */
export function plansIn(folder) {
  mkdirSync(folder, { recursive: true })
  const file = join(folder, 'plans.json')
  /** @type {Map<string, SharedPlan>} */
  const plans = new Map(
    existsSync(file)
      ? JSON.parse(readFileSync(file, 'utf8')).map((/** @type {SharedPlan} */ plan) => [plan.tag, plan])
      : [],
  )
  return {
    get: (/** @type {string} */ tag) => plans.get(tag),
    size: () => plans.size,
    all: () => [...plans.values()],
    add: (/** @type {SharedPlan} */ plan) => {
      plans.set(plan.tag, plan)
      writeWhole(file, JSON.stringify([...plans.values()], null, 1))
    },
  }
}

/**
 * What the users of one plan may do: nothing but with its own stream, so that no plan can be listed or guessed.
 *
 * @param {SharedPlan} plan
 */
function usersOf({ tag, read, write }) {
  const stream = `PLAN_${tag}`
  const ask = [
    `$JS.API.STREAM.INFO.${stream}`,
    `$JS.API.STREAM.MSG.GET.${stream}`,
    `$JS.API.CONSUMER.CREATE.${stream}`,
    `$JS.API.CONSUMER.CREATE.${stream}.>`,
    `$JS.API.CONSUMER.INFO.${stream}.*`,
    `$JS.API.CONSUMER.DELETE.${stream}.*`,
    `$JS.API.CONSUMER.MSG.NEXT.${stream}.*`,
    `here.${tag}`,
  ]
  const hear = [`_INBOX.${tag}.>`, `here.${tag}`]
  const user = (/** @type {string} */ name, /** @type {string} */ pass, /** @type {string[]} */ says) =>
    `  {user: ${quoted(name)}, password: ${quoted(pass)}, permissions: {publish: [${says.map(quoted)}], subscribe: [${hear.map(quoted)}]}}`
  const reader = user(`${tag}.r`, read, ask)
  return write ? [reader, user(`${tag}.w`, write, [...ask, `plan.${tag}.>`])] : [reader]
}

const quoted = (/** @type {string} */ text) => JSON.stringify(text)

/**
 * Writes the configuration of nats-server: streams on disk, a WebSocket that only this machine reaches, the users of every plan.
 *
 * @param {object} box
 * @param {string} box.folder
 * @param {string} box.name
 * @param {number} box.port
 * @param {number} box.wsPort
 * @param {string} box.pass of the box itself
 * @param {string} box.version of nats-server
 * @param {readonly SharedPlan[]} box.plans
 * @param {string} [box.more] lines besides, for a cluster or a leaf
 * @returns {string} path
 */
export function writeConfig({ folder, name, port, wsPort, pass, version, plans, more = '' }) {
  const always = syncsItself(version) ? ', sync_interval: always' : ''
  const path = join(folder, 'nats.conf')
  writeWhole(
    path,
    `server_name: ${quoted(name)}
listen: "127.0.0.1:${port}"
max_payload: ${MOST_BYTES.message}
max_connections: 20000
jetstream { store_dir: ${quoted(join(folder, 'streams'))}, max_memory_store: 64MB, max_file_store: ${SET_ASIDE}${always} }
pid_file: ${quoted(join(folder, 'nats.pid'))}
websocket { listen: "127.0.0.1:${wsPort}", no_tls: true }
authorization { users: [
  {user: "box", password: ${quoted(pass)}},
${plans.flatMap(usersOf).join(',\n')}
] }
${more}`,
  )
  chmodSync(path, 0o600)
  return path
}
