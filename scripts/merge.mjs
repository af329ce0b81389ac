import { runCommand } from './command.mjs'

await runCommand('src/command/merge-command.ts', 'runMerge')
