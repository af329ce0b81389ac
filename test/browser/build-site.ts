import { execFileSync } from 'node:child_process'

/** Where the site that the browser's tests visit is built. */
export const SITE = 'node_modules/.cache/fieldpair/site'

/** Before the first of them. In a process of its own, since under a test runner a build is not the one that people get. */
export default function buildSite() {
  const args = ['node_modules/vite/bin/vite.js', 'build', '--outDir', SITE, '--emptyOutDir', '--logLevel', 'warn']
  execFileSync(process.execPath, args, { env: { ...process.env, NODE_ENV: 'production' }, stdio: 'inherit' })
}
