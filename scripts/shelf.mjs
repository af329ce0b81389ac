import { runCommand } from './command.mjs'

await runCommand('src/command/shelf-command.ts', 'runShelf')
