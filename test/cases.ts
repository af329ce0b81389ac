/** Of how many times the random cases each test that counts them itself tries: `CASES=4 npm test` looks longer. */
const MANY = Number(process.env.CASES ?? 1)

/** That many random cases, or as many times more as was asked for. */
export const cases = (count: number): number => Math.ceil(count * MANY)
