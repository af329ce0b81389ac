import { createReadStream, existsSync, statSync } from 'node:fs'
import { createServer } from 'node:http'
import { connect } from 'node:net'
import { extname, join, normalize, sep } from 'node:path'

const TYPES = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json',
  '.geojson': 'application/geo+json',
  '.webmanifest': 'application/manifest+json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.wasm': 'application/wasm',
  '.txt': 'text/plain; charset=utf-8',
  '.zip': 'application/zip',
}

/** One visitor may send so much at once and so much a second, bytes, and have so many connections. */
const LIMITS = { burst: 16 * 1024 * 1024, perSecond: 512 * 1024, connections: 200, newPlansPerHour: 60 }

/**
 * Serves the built program, and behind the same address and port the way to nats-server, so that the page's policy need let in no other
 * origin.
 *
 * @param {object} front
 * @param {string} front.site folder
 * @param {() => boolean} front.isFull whether the box's disk is
 * @param {boolean} [front.hasBase] plans may be brought from there, also by somebody who only reads
 * @param {() => number} front.wsPort where nats-server takes WebSockets
 * @param {(plan: import('./box-config.mjs').SharedPlan) => Promise<string>} front.onNewPlan gives why not, or nothing
 */
export function webFront({ site, isFull, hasBase = false, wsPort, onNewPlan }) {
  /** @type {Map<string, number>} */
  const connections = new Map()
  /** @type {Map<string, number[]>} */
  const made = new Map()
  const sockets = new Set()
  const server = createServer((request, response) => {
    const path = decodeURIComponentOr(new URL(request.url ?? '/', 'http://box').pathname)
    if (path === '/share/box.json') return answer(response, 200, { box: 1, isFull: isFull(), hasBase })
    if (path === '/share/plans' && request.method === 'POST') return void takePlan(request, response)
    if (request.method !== 'GET' && request.method !== 'HEAD') return answer(response, 405, {})
    serveFile(site, path, request.method === 'HEAD', response)
  })

  /**
   * @param {import('node:http').IncomingMessage} request
   * @param {import('node:http').ServerResponse} response
   */
  async function takePlan(request, response) {
    if (isFull())
      return answer(response, 507, { why: 'The box has no room on its disk: free some room there.' })
    const who = request.socket.remoteAddress ?? ''
    const hourAgo = Date.now() - 3_600_000
    const lately = (made.get(who) ?? []).filter((at) => at > hourAgo)
    if (lately.length >= LIMITS.newPlansPerHour)
      return answer(response, 429, { why: 'This device has shared many plans within an hour: wait a while.' })
    made.set(who, [...lately, Date.now()])
    let text = ''
    for await (const piece of request) {
      text += piece
      if (text.length > 1000) return answer(response, 413, { why: 'That is no plan to share.' })
    }
    const plan = parsed(text)
    const isWord = (/** @type {unknown} */ word) => typeof word === 'string' && /^[\w-]{22}$/.test(word)
    const { tag, read, write } = plan ?? {}
    const mayWrite = isWord(write) || !(hasBase && write === undefined)
    if (![tag, read, ...(mayWrite ? [write] : [])].every(isWord))
      return answer(response, 400, { why: 'That is no plan to share.' })
    const why = await onNewPlan({ tag, read, ...(mayWrite && { write }) }).catch(String)
    answer(response, why ? 409 : 200, why ? { why } : {})
  }

  server.on('upgrade', (request, socket, head) => {
    const who = request.socket.remoteAddress ?? ''
    const count = connections.get(who) ?? 0
    if (request.url !== '/share/ws' || count >= LIMITS.connections) return socket.destroy()
    connections.set(who, count + 1)
    sockets.add(socket)
    const inner = connect(wsPort(), '127.0.0.1')
    inner.on('connect', () => {
      const lines = []
      for (let at = 0; at < request.rawHeaders.length; at += 2)
        lines.push(`${request.rawHeaders[at]}: ${request.rawHeaders[at + 1]}`)
      inner.write(`GET / HTTP/1.1\r\n${lines.join('\r\n')}\r\n\r\n`)
      inner.write(head)
      inner.pipe(socket)
      slowly(socket, inner)
    })
    const end = () => {
      inner.destroy()
      socket.destroy()
    }
    for (const each of [inner, socket]) each.on('error', end)
    socket.on('close', end)
    // What nats-server said last is why it closed: a slow link must bring that too.
    inner.on('close', () => socket.destroySoon())
    socket.on('close', () => {
      sockets.delete(socket)
      connections.set(who, (connections.get(who) ?? 1) - 1)
    })
  })

  return {
    server,
    /** @returns {Promise<void>} */
    close: () => {
      for (const socket of sockets) socket.destroy()
      server.closeAllConnections()
      return new Promise((resolve) => server.close(() => resolve()))
    },
  }
}

/**
 * Passes on what comes, no faster than a visitor may send: what is too much waits.
 *
 * @param {import('node:stream').Duplex} from
 * @param {import('node:net').Socket} to
 */
function slowly(from, to) {
  let left = LIMITS.burst
  let at = Date.now()
  from.on('data', (/** @type {Buffer} */ piece) => {
    const now = Date.now()
    left = Math.min(LIMITS.burst, left + ((now - at) / 1000) * LIMITS.perSecond) - piece.length
    at = now
    const isTaken = to.write(piece)
    if (isTaken && left > 0) return
    from.pause()
    if (left <= 0) setTimeout(() => from.resume(), (-left / LIMITS.perSecond) * 1000 + 1)
    else to.once('drain', () => from.resume())
  })
}

/**
 * @param {string} site
 * @param {string} path
 * @param {boolean} headOnly
 * @param {import('node:http').ServerResponse} response
 */
function serveFile(site, path, headOnly, response) {
  const file = normalize(join(site, path.endsWith('/') ? `${path}index.html` : path))
  const isInside = file.startsWith(normalize(site) + sep)
  if (!isInside || !existsSync(file) || !statSync(file).isFile()) {
    response.writeHead(404, { 'content-type': 'text/plain' }).end('Not here.')
    return
  }
  const type = TYPES[/** @type {keyof typeof TYPES} */ (extname(file))] ?? 'application/octet-stream'
  response.writeHead(200, {
    'content-type': type,
    'content-length': statSync(file).size,
    'cache-control': 'no-cache',
    'x-content-type-options': 'nosniff',
    'referrer-policy': 'no-referrer',
  })
  if (headOnly) response.end()
  else createReadStream(file).pipe(response)
}

/**
 * @param {import('node:http').ServerResponse} response
 * @param {number} status
 * @param {object} value
 */
function answer(response, status, value) {
  response.writeHead(status, { 'content-type': 'application/json', 'cache-control': 'no-store' })
  response.end(JSON.stringify(value))
}

/** @param {string} text */
function parsed(text) {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}

/** @param {string} text */
function decodeURIComponentOr(text) {
  try {
    return decodeURIComponent(text)
  } catch {
    return '/'
  }
}
