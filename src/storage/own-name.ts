/** The folder of the site that this copy of the program lies in. Another copy on the same server has another. */
const ownPath = (): string => new URL('.', location.href).pathname

/** A name in what the browser keeps for the whole server, that no other copy of the program there has. */
export const ownName = (name: string): string => `${name} ${ownPath()}`
