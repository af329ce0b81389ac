import { randomBytes } from 'node:crypto'
import { join } from 'node:path'
import { startBox } from './box.mjs'
import { freePort } from './nats-server.mjs'

const COUNT = 3

/**
 * Three boxes on this machine that hold every stream three times. On three machines each has its own folder, and the routes name the machines.
 *
 * @param {object} wish
 * @param {string} wish.folder
 * @param {string} wish.site the built program
 * @param {string} wish.nats path of nats-server
 * @param {number} wish.port of the first, the others follow; 0 for any
 * @param {string} [wish.host]
 * @param {string} [wish.pass] of the boxes themselves
 * @param {(sentence: string) => void} [wish.tell]
 */
export async function startThreeBoxes({ folder, port, tell = () => {}, ...wish }) {
  const { pass = randomBytes(24).toString('base64url') } = wish
  const ports = []
  for (let at = 0; at < COUNT; at++) ports.push(await freePort())
  const routes = ports.map((each) => `"nats://127.0.0.1:${each}"`).join(', ')
  const starting = ports.map((each, at) =>
    startBox({
      ...wish,
      ...{ pass, name: `box-${at + 1}`, copies: COUNT },
      folder: join(folder, `cluster-${at + 1}`),
      port: port && port + at,
      more: `cluster { name: fieldpair, listen: "127.0.0.1:${each}", routes: [${routes}] }`,
      onPlan: (plan) => void others(at).then((boxes) => boxes.map((box) => box.letIn(plan))),
      tell: (sentence) => tell(`box ${at + 1}: ${sentence}`),
    }),
  )
  /** @param {number} at */
  const others = async (at) => (await Promise.all(starting)).filter((_, other) => other !== at)
  return await Promise.all(starting)
}
