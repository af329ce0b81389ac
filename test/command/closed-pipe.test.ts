import { spawn } from 'node:child_process'
import { expect, test } from 'vitest'

test('a command whose reader has seen enough ends quietly, as it would have ended', async () => {
  const command = spawn(process.execPath, ['scripts/report.mjs', 'public/demo.plan.geojson'])
  let err = ''
  command.stderr.on('data', (text) => {
    err += text
  })
  command.stdout.destroy()
  const code = await new Promise((done) => command.on('close', done))
  expect(err).toBe('')
  expect(code).toBe(0)
}, 60_000)
