import { builtinEnvironments, type Environment, type EnvironmentReturn } from 'vitest/runtime'

const happy = builtinEnvironments['happy-dom']

/** What makes a page anew in the place of the one that a file of tests has left: test/begin-anew.ts calls it. */
export const RENEW_PAGE = Symbol.for('fieldpair: renew the page')

/** A page by happy-dom, which is read once for all files that one process tries. */
export default {
  ...happy,
  name: 'page',
  // Sources are transformed once, for files with a page and without.
  viteEnvironment: 'ssr',
  async setup(global, options): Promise<EnvironmentReturn> {
    let page = await happy.setup(global, options)
    global[RENEW_PAGE] = async () => {
      await page.teardown(global)
      page = await happy.setup(global, options)
    }
    return { teardown: (last) => page.teardown(last) }
  },
} satisfies Environment
