import type { Supply } from './supply'

/** The smallest board or exchange with so many ports; one that does not say how many it has comes last. */
export const smallestBoard = (
  supplies: Iterable<Supply>,
  kind: Supply['kind'],
  ports: number,
): Supply | undefined =>
  [...supplies]
    .filter((each) => each.kind === kind && portsOf(each) >= ports)
    .sort((a, b) => portsOf(a) - portsOf(b))[0]

const portsOf = ({ ports }: Supply): number => ports ?? Number.MAX_SAFE_INTEGER
