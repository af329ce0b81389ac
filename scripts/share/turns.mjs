/** No more than so many at a time: whoever wants to waits until somebody has done. */
export class Turns {
  /** @type {{ who: string, go: () => void }[]} */
  #waiting = []
  #left

  /** @param {number} most */
  constructor(most) {
    this.#left = most
  }

  /**
   * @param {string} who
   * @returns {Promise<void>}
   */
  take(who) {
    if (this.#left > 0) {
      this.#left -= 1
      return Promise.resolve()
    }
    return new Promise((go) => this.#waiting.push({ who, go }))
  }

  give() {
    const next = this.#waiting.shift()
    if (next) next.go()
    else this.#left += 1
  }

  get isWanted() {
    return this.#waiting.length > 0
  }

  /**
   * Is served next, where it waits.
   *
   * @param {string} who
   */
  hurry(who) {
    const at = this.#waiting.findIndex((each) => each.who === who)
    if (at > 0) this.#waiting.unshift(...this.#waiting.splice(at, 1))
  }
}
