import type { Mark } from '../../geo/map-fit'

/** A mark on the picture; its place on the ground may still be wanting. */
export interface HalfMark extends Omit<Mark, 'position'> {
  readonly position: Mark['position'] | undefined
}
