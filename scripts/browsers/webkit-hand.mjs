import { spawn, spawnSync } from 'node:child_process'

/** @typedef {import('./walk.mjs').Hand} Hand */

const PORT = 4568
const DISPLAY = ':98'
const wait = (/** @type {number} */ ms) => new Promise((done) => setTimeout(done, ms))

/** Keys that are no letters, as WebDriver writes them: W3C WebDriver, table of keyboard actions. */
const CONTROL = '\uE009'
const ENTER = '\uE007'

/**
 * WebKitGTK's own little browser over WebDriver, on a screen that nobody sees.
 *
 * @param {string} binary path of MiniBrowser
 * @returns {Promise<Hand>}
 */
export async function webkitHand(binary) {
  const screen = spawn('Xvfb', [DISPLAY, '-screen', '0', '1600x1000x24'], { stdio: 'ignore' })
  await wait(500)
  const driver = spawn('WebKitWebDriver', [`--port=${PORT}`], {
    stdio: 'ignore',
    // A sandbox within a container has no rights to be made, and there is no graphics card to compose on.
    env: {
      ...process.env,
      DISPLAY,
      WEBKIT_DISABLE_COMPOSITING_MODE: '1',
      WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: '1',
    },
  })
  await wait(500)

  /**
   * @param {string} method
   * @param {string} path
   * @param {unknown} [body]
   */
  async function ask(method, path, body) {
    const response = await fetch(`http://127.0.0.1:${PORT}${path}`, {
      method,
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    })
    const { value } = await response.json()
    if (!response.ok) throw new Error(`${path}: ${value.error}: ${value.message}`)
    return value
  }
  const options = { 'webkitgtk:browserOptions': { binary, args: ['--automation'] } }
  const { sessionId } = await ask('POST', '/session', { capabilities: { alwaysMatch: options } })
  const session = `/session/${sessionId}`
  await ask('POST', `${session}/window/rect`, { x: 0, y: 0, width: 1440, height: 960 })

  const mouse = (/** @type {object[]} */ actions) =>
    ask('POST', `${session}/actions`, {
      actions: [{ type: 'pointer', id: 'mouse', parameters: { pointerType: 'mouse' }, actions }],
    })
  const keys = (/** @type {[string, string][]} */ strokes) =>
    ask('POST', `${session}/actions`, {
      actions: [{ type: 'key', id: 'keys', actions: strokes.map(([type, value]) => ({ type, value })) }],
    })
  return {
    go: (url) => ask('POST', `${session}/url`, { url }),
    run: (act, ...args) =>
      ask('POST', `${session}/execute/sync`, { script: `return (${act}).apply(null, arguments)`, args }),
    move: (x, y) => mouse([{ type: 'pointerMove', duration: 50, x: Math.round(x), y: Math.round(y) }]),
    press: () => mouse([{ type: 'pointerDown', button: 0 }]),
    release: () => mouse([{ type: 'pointerUp', button: 0 }]),
    replace: async (text) => {
      await keys([
        ['keyDown', CONTROL],
        ['keyDown', 'a'],
        ['keyUp', 'a'],
        ['keyUp', CONTROL],
      ])
      for (const letter of [...text, ENTER])
        await keys([
          ['keyDown', letter],
          ['keyUp', letter],
        ])
    },
    // This driver knows no printing.
    print: async () => null,
    // Its driver's own pictures never come where nothing is composed.
    picture: async () => {
      const { status, stdout } = spawnSync('import', ['-display', DISPLAY, '-window', 'root', 'png:-'])
      return status === 0 ? stdout : null
    },
    faults: () => [],
    close: async () => {
      await ask('DELETE', session).catch(() => undefined)
      driver.kill()
      screen.kill()
    },
  }
}
