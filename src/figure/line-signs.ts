/** Signs of what is on a line, in steps of the screen about their place; on paper, where more lies together, a step is 0.16 mm. */
export const LINE_STEP_MM = 0.16

/** A bend is a ring. */
export const BEND_RADIUS = 5

/** A lozenge where one spool ends and the next begins. */
export const SPLICE_SIGN = 'M0 -9L9 0L0 9L-9 0Z'

/** A small plate that hangs from its place, so that a bend there stays in sight. */
export const TAG_SIGN = 'M0 0V9M-4 9H4V17L0 20L-4 17Z'

/** Its second rim, where the pair can be opened and measured. */
export const TEST_POINT_RIM = 'M-7 6H7V18.5L0 23.5L-7 18.5Z'

/** How far a tag hangs down, and half its width, with that rim. */
export const TAG_REACH = { down: 23.5, aside: 7 } as const
