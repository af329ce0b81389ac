import { readFile } from 'node:fs/promises'
import { createServer, type ServerResponse } from 'node:http'
import type { AddressInfo } from 'node:net'
import { extname, join } from 'node:path'

/** What a server may do instead of sending a file. */
export type Fault = 404 | 500 | 'html' | 'held' | 'drop'

export interface FaultyServer {
  readonly url: string
  /** Which folder lies under a path of the site, `/` or `/one/`. */
  readonly folders: Map<string, string>
  /** What becomes of a path; undefined sends the file. */
  fault: (path: string) => Fault | undefined
  /** Added to every answer. */
  headers: Record<string, string>
  /** What was asked for, in order. */
  readonly asked: string[]
  /** Sends what is held back, and holds back no more of it. */
  readonly letGo: () => void
  readonly close: () => Promise<void>
}

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
}
const PAGE = '<!doctype html><title>Sign in</title><p>Welcome to this network. Please sign in.'

/** A server of folders that can be told to fail, as half-finished uploads, gateways and sign-in pages do. */
export async function serveFaulty(folder: string): Promise<FaultyServer> {
  const held: (() => void)[] = []
  const at: FaultyServer = {
    url: '',
    folders: new Map([['/', folder]]),
    fault: () => undefined,
    headers: {},
    asked: [],
    letGo: () => {
      at.fault = () => undefined
      for (const send of held.splice(0)) send()
    },
    close: () => {
      at.letGo()
      return new Promise((done) => server.close(() => done()))
    },
  }
  const send = (response: ServerResponse, status: number, type: string, body: string | Buffer) =>
    response.writeHead(status, { 'content-type': type, ...at.headers }).end(body)
  const server = createServer(async (request, response) => {
    const path = request.url!.split('?')[0]!
    at.asked.push(request.url!)
    const fault = at.fault(path)
    if (fault === 'drop') return void response.destroy()
    if (fault === 'html') return void send(response, 200, 'text/html', PAGE)
    if (fault === 'held') await new Promise<void>((done) => held.push(done))
    else if (fault) return void send(response, fault, 'text/plain', 'no')
    const root = [...at.folders.keys()]
      .filter((each) => path.startsWith(each))
      .sort((a, b) => b.length - a.length)[0]!
    const name = path.slice(root.length) || 'index.html'
    const body = await readFile(join(at.folders.get(root)!, name)).catch(() => undefined)
    if (body) send(response, 200, TYPES[extname(name)] ?? 'application/octet-stream', body)
    else send(response, 404, 'text/plain', 'no')
  })
  server.keepAliveTimeout = 1
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done))
  Object.assign(at, { url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/` })
  return at
}
