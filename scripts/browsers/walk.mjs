import assert from 'node:assert/strict'
import { execFileSync } from 'node:child_process'
import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

/**
 * What a browser must let be done to it, by real input.
 *
 * @typedef {object} Hand
 * @property {(url: string) => Promise<void>} go
 * @property {(act: (...args: any[]) => any, ...args: any[]) => Promise<any>} run calls a function in the page
 * @property {(x: number, y: number) => Promise<void>} move
 * @property {() => Promise<void>} press
 * @property {() => Promise<void>} release
 * @property {(text: string) => Promise<void>} replace types over what stands in the field that has the focus, and Enter
 * @property {() => Promise<Buffer | null>} print null where the browser cannot be asked to print
 * @property {() => Promise<Buffer | null>} picture what is seen now; null where nobody can tell
 * @property {() => string[]} faults errors of the page
 * @property {() => Promise<void>} close
 */

const PATIENCE_MS = 15_000
/** The margin of a sheet is 12 mm, 34 pt. */
const LEAST_MARGIN_PT = 30
const wait = (/** @type {number} */ ms) => new Promise((done) => setTimeout(done, ms))

/**
 * Asks again and again until the answer is something.
 *
 * @template T
 * @param {string} what
 * @param {() => Promise<T>} ask
 * @returns {Promise<NonNullable<T>>}
 */
async function until(what, ask) {
  const end = Date.now() + PATIENCE_MS
  for (;;) {
    const answer = await ask()
    if (answer) return answer
    if (Date.now() > end) throw new Error(`waited in vain for ${what}`)
    await wait(100)
  }
}

/** In the page: the middle of what a person would click, brought into sight. */
function middleOf(/** @type {'button' | 'field' | 'css'} */ kind, /** @type {string} */ name) {
  const seen = (/** @type {Element} */ element) => element.getClientRects().length > 0
  const all = (/** @type {string} */ selector) => [...document.querySelectorAll(selector)].filter(seen)
  const nameOf = (/** @type {Element} */ button) => {
    const copy = button.cloneNode(true)
    for (const hidden of copy.querySelectorAll('[aria-hidden="true"]')) hidden.remove()
    return button.getAttribute('aria-label') ?? copy.textContent.trim()
  }
  const found =
    kind === 'css'
      ? all(name)[0]
      : kind === 'button'
        ? all('button').find((button) => nameOf(button) === name)
        : all('label')
            .filter((label) => label.textContent.trim() === name)
            .map((label) => document.getElementById(label.htmlFor))[0]
  if (!found || found.disabled) return null
  found.scrollIntoView({ block: 'nearest' })
  const { left, top, width, height } = found.getBoundingClientRect()
  return [left + width / 2, top + height / 2]
}

/** In the page: the text of the first element that a selector finds and that holds some words. */
const textOf = (/** @type {string} */ selector, /** @type {string} */ words) =>
  [...document.querySelectorAll(selector)].find((element) => element.textContent.includes(words))?.textContent

/** In the page: chooses an option; lists that unfold are drawn by the system, where no driver reaches. */
function choose(/** @type {string} */ place, /** @type {string} */ value) {
  const label = [...document.querySelectorAll('label')].find((each) => each.textContent.trim() === place)
  const list = document.querySelector(label ? `#${CSS.escape(label.htmlFor)}` : place)
  if (!list) return false
  list.value = value
  list.dispatchEvent(new Event('change', { bubbles: true }))
  return true
}

/**
 * A person draws a net, sees it ring, changes it, finds it again after a reload, has papers made and printed, and opens the
 * program once more with the server gone.
 *
 * @param {Hand} hand
 * @param {string} url
 * @param {() => Promise<void>} stopServer
 * @param {(said: string) => void} say
 */
export async function walk(hand, url, stopServer, say) {
  const at = (/** @type {number} */ x, /** @type {number} */ y) => hand.move(x, y)
  const click = async (/** @type {number} */ x, /** @type {number} */ y) => {
    await at(x, y)
    await hand.press()
    await hand.release()
    await wait(150)
  }
  const find = (/** @type {string} */ kind, /** @type {string} */ name) =>
    until(`${kind} ${name}`, () => hand.run(middleOf, kind, name))
  const on = async (/** @type {string} */ kind, /** @type {string} */ name) => {
    const [x, y] = await find(kind, name)
    await click(x, y)
  }
  /** A place on the map, from its corner. */
  const onMap = async (/** @type {number} */ x, /** @type {number} */ y) => {
    const [left, top] = await hand.run(() => {
      const box = document.querySelector('#map').getBoundingClientRect()
      return [box.left, box.top]
    })
    return /** @type {const} */ ([left + x, top + y])
  }
  const clickMap = async (/** @type {number} */ x, /** @type {number} */ y) => click(...(await onMap(x, y)))
  const figureOf = async (/** @type {string} */ row) =>
    Number.parseFloat(
      await until(row, () =>
        hand.run(
          (words) =>
            [...document.querySelectorAll('.margins li')]
              .find((item) => item.textContent.includes(words))
              ?.querySelector('strong')?.textContent,
          row,
        ),
      ),
    )
  const loop = () => hand.run(textOf, '.panel p, .panel li, .panel dd', 'A meter reads')
  const started = () => find('css', '.circuits button')

  await hand.go(url)
  await started()
  await on('button', 'Plans')
  await on('button', 'New plan')
  await on('button', 'Station')
  await clickMap(250, 300)
  await clickMap(750, 420)
  await on('button', 'Line')
  for (const [x, y] of [
    [250, 300],
    [400, 250],
    [600, 480],
    [750, 420],
  ])
    await clickMap(x, y)
  await on('button', 'Select')
  for (const [x, y, name] of /** @type {[number, number, string][]} */ ([
    [250, 300, 'Alder'],
    [750, 420, 'Birch'],
  ])) {
    await clickMap(x, y)
    await on('field', 'Name')
    await hand.replace(name)
    await until('the set', () => hand.run(choose, '.panel .question select', 'crank-1600'))
    await wait(200)
  }
  await on('button', '← The whole plan')
  await on('css', '.circuits button')
  const drawn = await figureOf('Alder → Birch')
  assert(drawn > 0, 'the bell at Birch gets some volts')
  say(`draws a net: ${drawn} V at Birch`)

  await at(...(await onMap(600, 480)))
  await hand.press()
  await at(...(await onMap(610, 600)))
  await at(...(await onMap(620, 720)))
  await wait(200)
  const underHand = await figureOf('Alder → Birch')
  await hand.release()
  assert(underHand < drawn, 'a longer line gives fewer volts, under the hand')
  say(`drags a bend: ${underHand} V`)

  await on('button', 'Alder – Birch')
  const fieldWire = await until('the loop', loop)
  assert(await hand.run(choose, 'Wire', 'copper-22'))
  const copper = await until('another loop', async () => {
    const text = await loop()
    return text !== fieldWire && text
  })
  await on('button', 'Undo')
  await until('the loop from before', async () => (await loop()) === fieldWire)
  await on('button', 'Redo')
  await until('the loop again', async () => (await loop()) === copper)
  say('takes another wire, undoes it and does it again')

  await wait(1000)
  await hand.go(url)
  await started()
  await on('css', '.circuits button')
  assert((await figureOf('Alder → Birch')) > 0)
  say('finds the plan again after a reload')

  await on('button', 'Papers')
  await until('papers', () =>
    hand.run(() =>
      [...document.querySelectorAll('.papers button')].some(
        (each) => each.textContent.trim() === 'Print' && !each.disabled,
      ),
    ),
  )
  const { sheets, cut } = await hand.run(() => {
    const all = [...document.querySelectorAll('.papers .sheet')]
    return {
      sheets: all.length,
      cut: all.filter(
        (sheet) => sheet.scrollHeight > sheet.clientHeight + 1 || sheet.scrollWidth > sheet.clientWidth + 1,
      ).length,
    }
  })
  assert(sheets > 3, `${sheets} sheets are made`)
  assert.equal(cut, 0, 'sheets whose content is cut')
  const pdf = await hand.print()
  if (pdf) {
    const path = join(mkdtempSync(join(tmpdir(), 'fieldpair-')), 'papers.pdf')
    writeFileSync(path, pdf)
    const text = execFileSync('pdftotext', ['-layout', path, '-'], { encoding: 'utf8' })
    if (process.env.KEEP_PDF) say(path)
    const pages = Number(/Pages:\s+(\d+)/.exec(execFileSync('pdfinfo', [path], { encoding: 'utf8' }))?.[1])
    for (const words of ['Alder', 'Birch']) assert(text.includes(words), `${words} is printed`)
    assert.equal(pages, sheets, 'a page is printed for each sheet')
    const first = execFileSync('pdftotext', ['-bbox', '-l', '1', path, '-'], { encoding: 'utf8' })
    const leftPt = Math.min(...[...first.matchAll(/xMin="([\d.]+)"/g)].map(([, pt]) => Number(pt)))
    assert(leftPt > LEAST_MARGIN_PT, `the first page keeps its margin: ${leftPt} pt`)
    say(`makes ${sheets} sheets and prints them, a page each`)
  } else say(`makes ${sheets} sheets, none cut (this driver cannot be asked to print)`)

  await until('the release to be kept', () => hand.run(() => navigator.serviceWorker.controller !== null))
  await stopServer()
  await hand.go(url)
  await started()
  say('opens with the server gone')
  assert.deepEqual(hand.faults(), [])
}
