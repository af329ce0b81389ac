import { runCommand } from './command.mjs'

await runCommand('src/command/report-command.ts', 'runReport')
