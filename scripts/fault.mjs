import { runCommand } from './command.mjs'

await runCommand('src/command/fault-command.ts', 'runFault')
