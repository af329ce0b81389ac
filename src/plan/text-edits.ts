import type { Plan } from './plan'

export const setTitle = (plan: Plan, title: string): Plan =>
  plan.title === title ? plan : { ...plan, title }

export const setNote = (plan: Plan, note: string): Plan => (plan.note === note ? plan : { ...plan, note })
