import { defineConfig, type Plugin } from 'vite'
import { licences } from './vite/licences.ts'
import { release } from './vite/release.ts'
import { unusedParts } from './vite/unused-parts.ts'

/** What the page may ask for: nothing from any other origin. wasm and blobs are for the decoders of elevation files. */
const OFFLINE_POLICY = {
  'default-src': "'none'",
  'script-src': "'self' 'wasm-unsafe-eval'",
  'style-src': "'self'",
  'img-src': "'self' data: blob:",
  'font-src': "'self'",
  'connect-src': "'self' data: blob:",
  'worker-src': "'self' blob:",
  'manifest-src': "'self'",
  'base-uri': "'none'",
  'form-action': "'none'",
}

/** The same with map and elevation tiles let in: only for the page that a person goes to by turning them on. */
const ONLINE_POLICY = {
  ...OFFLINE_POLICY,
  'img-src': `${OFFLINE_POLICY['img-src']} https:`,
  'connect-src': `${OFFLINE_POLICY['connect-src']} https:`,
}

const policyText = (policy: Record<string, string>) =>
  Object.entries(policy)
    .map(([directive, sources]) => `${directive} ${sources}`)
    .join('; ')

/**
 * Writes the content security policy into index.html, and beside it online.html: the same page under the wider policy.
 * Two pages, because a policy can be narrowed by a script but never widened.
 */
function contentSecurity(): Plugin {
  let developing = false
  return {
    name: 'content-security',
    configResolved: ({ command }) => {
      developing = command === 'serve'
    },
    configureServer: (server) => {
      server.middlewares.use((request, _response, next) => {
        if (request.url?.startsWith('/online.html')) request.url = request.url.replace('online', 'index')
        next()
      })
    },
    transformIndexHtml: (html, { originalUrl }) => {
      const policy = originalUrl?.startsWith('/online.html') ? ONLINE_POLICY : OFFLINE_POLICY
      // The development server puts styles into the page by script.
      const styles = developing ? { 'style-src': "'self' 'unsafe-inline'" } : {}
      return html.replace('{{policy}}', policyText({ ...policy, ...styles }))
    },
    generateBundle: {
      order: 'post',
      handler(_options, bundle) {
        const page = bundle['index.html']
        if (page?.type !== 'asset') return
        const source = String(page.source).replace(policyText(OFFLINE_POLICY), policyText(ONLINE_POLICY))
        this.emitFile({ type: 'asset', fileName: 'online.html', source })
      },
    },
  }
}

/**
 * Names one chunk for all that the first screen imports: a shared module more or less would else be a request of its own,
 * and small pieces compress badly. The entry itself stays apart: it awaits pieces that import this chunk, and each would wait
 * for the other.
 */
function firstScreen(id: string, modules: ModuleSource): string | null {
  const seen = new Set<string>()
  const isReached = (each: string): boolean => {
    if (seen.has(each)) return false
    seen.add(each)
    const module = modules.getModuleInfo(each)
    return module !== null && (module.isEntry || module.importers.some(isReached))
  }
  const isEntry = id.endsWith('/src/main.tsx') || id.endsWith('.html')
  return !isEntry && isReached(id) ? 'first-screen' : null
}

interface ModuleSource {
  readonly getModuleInfo: (
    id: string,
  ) => { readonly isEntry: boolean; readonly importers: readonly string[] } | null
}

const LICENCES = licences()

export default defineConfig({
  base: './',
  // Real 404s: a missing file must not come back as the page.
  appType: 'mpa',
  // The coast's outline is the one big piece; it loads on its own.
  build: {
    target: 'es2022',
    assetsInlineLimit: 0,
    // Every browser that reads ES2022 knows it. A piece that is wanted later asks for its own parts: they lie in the cache.
    modulePreload: {
      polyfill: false,
      resolveDependencies: (_file, parts, { hostType }) =>
        hostType === 'html' ? parts : parts.filter((part) => part.endsWith('.css')),
    },
    chunkSizeWarningLimit: 600,
    rolldownOptions: {
      checks: { pluginTimings: false },
      output: { codeSplitting: { groups: [{ name: firstScreen }] } },
    },
  },
  worker: { format: 'es', plugins: () => [unusedParts(), LICENCES.worker] },
  plugins: [unusedParts(), contentSecurity(), LICENCES.page, release()],
})
