/** An entry as it comes back from a file: no member that is undefined, and 0 for −0. */
export const asFileHolds = <T extends object>(entry: T): T => JSON.parse(JSON.stringify(entry))
