import { ensureDependencies, ROOT } from './dependencies.mjs'

ensureDependencies()
process.chdir(ROOT)

// Built and served from disk rather than by the development server: that way it works offline from the first visit on.
const { build, preview } = await import('vite')
await build({ logLevel: 'warn' })
const server = await preview({ logLevel: 'warn' })
console.log(`Fieldpair is at ${server.resolvedUrls?.local[0]}\nStop it with Ctrl-C.`)
