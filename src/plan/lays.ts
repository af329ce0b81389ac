/** How a leg of a line is laid. */
export const LAYS = ['surface', 'overhead', 'buried', 'water'] as const
