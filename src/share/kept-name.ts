import { type Signal, signal } from '@preact/signals'

const KEY = 'fieldpair-name'

/** What others read beside what this person does; kept in this browser where it keeps anything. */
export function keptName(): Signal<string> {
  const name = signal(read())
  name.subscribe((value) => {
    try {
      localStorage.setItem(KEY, value)
    } catch {}
  })
  return name
}

function read(): string {
  try {
    return localStorage.getItem(KEY) ?? ''
  } catch {
    return ''
  }
}
