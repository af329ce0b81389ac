const WHEN = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' })

/** When something was kept, in the person's own way of writing dates. */
export const whenKept = (date: Date | undefined): string => (date ? WHEN.format(date) : 'date not known')
