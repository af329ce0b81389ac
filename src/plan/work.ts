/** What one figure of the work is, where it must lie, and what it is for. */
interface WorkFigure {
  readonly what: string
  readonly min: number
  readonly max: number
  readonly unit: string
  readonly whole?: true
  /** What holds in a plan that is silent about it. */
  readonly usual: number
  readonly says: string
}

/** The figures of the work: how the net is used, and by whom it is laid. A person can change each of them. */
export const WORK = {
  talkMinutesPerDay: {
    what: 'The talk a day',
    min: 0,
    max: 1440,
    unit: 'min',
    usual: 60,
    says: 'How long each circuit talks in a day: batteries are reckoned by it.',
  },
} as const satisfies Readonly<Record<string, WorkFigure>>

export type WorkField = keyof typeof WORK

export const WORK_FIELDS = Object.keys(WORK) as readonly WorkField[]

/** What a plan says of the work: only the figures that differ from the usual ones. */
export type Work = { readonly [F in WorkField]?: number } & {
  readonly rest?: Readonly<Record<string, unknown>>
}

/** A figure of the work: the plan's own, or the usual one. */
export const workOf = (plan: { readonly work?: Work }, field: WorkField): number =>
  plan.work?.[field] ?? WORK[field].usual
