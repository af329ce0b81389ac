/** One thing to do in a dialog. It gives the sentence that refuses, if it cannot be done with what was typed. */
export interface Answer {
  readonly words: string
  readonly act: (typed: readonly string[]) => string | undefined
}

let count = 0

/** A dialog with a question, a word of explanation, fields, and answers of which Enter takes the last. */
export function questionDialog(
  question: string,
  explanation: string,
  fields: readonly { readonly label: string; readonly value: string }[],
  answers: readonly Answer[],
): HTMLDialogElement {
  const dialog = document.createElement('dialog')
  dialog.className = 'ask'
  const heading = document.createElement('h2')
  heading.id = `ask-${++count}`
  heading.textContent = question
  dialog.setAttribute('aria-labelledby', heading.id)
  const words = document.createElement('p')
  words.textContent = explanation
  const refusal = document.createElement('p')
  refusal.className = 'fails'
  refusal.setAttribute('role', 'alert')

  const inputs = fields.map(({ label, value }) => {
    const element = document.createElement('label')
    const input = document.createElement('input')
    input.value = value
    input.spellcheck = false
    input.autocomplete = 'off'
    element.append(label, input)
    return { element, input }
  })
  const give = ({ act }: Answer) => {
    refusal.textContent = act(inputs.map(({ input }) => input.value)) ?? ''
    if (!refusal.textContent) dialog.close()
  }
  const buttons = answers.map((answer) => {
    const button = document.createElement('button')
    button.type = 'button'
    button.textContent = answer.words
    button.addEventListener('click', () => give(answer))
    return button
  })
  dialog.addEventListener('keydown', (event) => {
    const last = answers.at(-1)
    if (event.key !== 'Enter' || !(event.target instanceof HTMLInputElement) || !last) return
    event.preventDefault()
    give(last)
  })
  const row = document.createElement('div')
  row.className = 'answers'
  row.append(...buttons)
  dialog.append(heading, words, ...inputs.map(({ element }) => element), refusal, row)
  return dialog
}
