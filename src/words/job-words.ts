const UNHARMED = 'Your plan is unchanged. Try again: it starts afresh.'

/** Work off the main thread that failed. `what`: what was being done, as the subject of a sentence. */
export const jobFailedSentence = (what: string, why: string): string =>
  `${what} stopped unexpectedly (${why.replace(/\.$/, '')}). ${UNHARMED}`

/** Work that gave no sign of life for so long that it was ended. */
export const jobSilentSentence = (what: string, silenceS: number): string =>
  `${what} gave no sign of life for ${silenceS} s and was stopped. ${UNHARMED}`
