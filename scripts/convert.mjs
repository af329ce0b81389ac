import { runCommand } from './command.mjs'

await runCommand('src/command/convert-command.ts', 'runConvert')
