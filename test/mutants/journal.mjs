/** @type {readonly import('./mutants.mjs').Mutant[]} */
export const JOURNAL = [
  {
    fault: 'an edit takes the place of all that stands there, seen or not',
    file: 'src/journal/held-things.ts',
    from: '!isBorn(each) && !over.has(idOf(each)))',
    to: 'over.size > 9 && !isBorn(each))',
    tests: ['test/journal/journal.test.ts'],
  },
  {
    fault: 'what was taken out stays away though another hand changed it',
    file: 'src/journal/held-things.ts',
    from: 'return { isThere: isChanged, rank',
    to: 'return { isThere: isChanged && false, rank',
    tests: ['test/journal/journal.test.ts'],
  },
  {
    fault: 'an edit is taken before what it builds on',
    file: 'src/journal/journal.ts',
    from: 'step.length !== last - first + 1 || !isReady',
    to: 'step.length !== last - first + 1',
    tests: ['test/journal/many-hands.test.ts'],
  },
  {
    fault: 'undo takes back what others have set since',
    file: 'src/journal/carried-over.ts',
    from: 'else own.set(member, value)',
    to: 'else own.get(member)',
    tests: ['test/journal/journal.test.ts'],
  },
  {
    fault: 'an edit of another hand is taken as it comes',
    file: 'src/journal/journal.ts',
    from: 'if (fault) refused',
    to: 'if (fault && edit.number < 0) refused',
    tests: ['test/journal/journal.test.ts'],
  },
  {
    fault: 'records of both hands under one id become one',
    file: 'src/journal/held-things.ts',
    from: "if (kind === 'field') this.#tellRecordsApart(made)",
    to: "if (kind === 'fields') this.#tellRecordsApart(made)",
    tests: ['test/journal/journal.test.ts'],
  },
]
