/**
 * A sign, drawn about its place by M, L, H and V, as it stands at a point. Moved there by a transform it would be a piece of its own for the
 * painter, and hundreds of those are felt.
 */
export const signAt = (sign: string, { x, y }: { readonly x: number; readonly y: number }): string =>
  sign.replace(
    /([MLHV])(-?[\d.]+)(?: (-?[\d.]+))?/g,
    (_, step: string, first: string, second?: string) =>
      `${step}${(Number(first) + (step === 'V' ? y : x)).toFixed(1)}${second ? ` ${(Number(second) + y).toFixed(1)}` : ''}`,
  )
