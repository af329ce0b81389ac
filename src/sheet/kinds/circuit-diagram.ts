import { circuitName } from '../../plan/plan'
import { type CircuitDrawing, drawCircuit } from '../drawing/circuit-drawing'
import { type Block, columnsMm } from '../layout/block'
import type { SheetRoom } from '../layout/paper-size'
import { circuitsIn } from '../paper-scope'
import type { PaperSource } from '../paper-source'

/** A circuit whose lines go no further than one station from its first has half a sheet's width. */
const SMALL = { columns: 2, perRow: 2 } as const

/** Every circuit as a diagram: stations with their sets, supply, lines with pair, ohms, dB and posts, joints. Small ones stand beside each other. */
export function circuitDiagram(source: PaperSource, room: SheetRoom): readonly Block[] {
  const { plan } = source
  const circuits = circuitsIn(source).flatMap(({ id }) => plan.circuits.get(id) ?? [])
  if (circuits.length === 0) return []
  const heightMm = room.heightMm - 30
  const [halfMm] = columnsMm([1, 1], room.widthMm) as [number, number]
  const small: (readonly Block[])[] = []
  const large: Block[] = []
  for (const circuit of circuits) {
    const name = circuitName(plan, circuit)
    const half = drawCircuit(source, circuit, { widthMm: halfMm, heightMm }, SMALL.columns)
    if (half.length === 1) small.push(diagram(half[0]!, name, name))
    else {
      const drawings = drawCircuit(source, circuit, { widthMm: room.widthMm, heightMm })
      large.push(
        ...drawings.flatMap((drawing, i) =>
          diagram(drawing, name, drawings.length > 1 ? `${name}, part ${i + 1} of ${drawings.length}` : name),
        ),
      )
    }
  }
  const rows = Array.from(
    { length: Math.ceil(small.length / SMALL.perRow) },
    (_, i): Block => ({
      kind: 'beside',
      columns: Array.from({ length: SMALL.perRow }, (_each, k) => ({
        share: 1,
        blocks: small[i * SMALL.perRow + k] ?? [],
      })),
    }),
  )
  return [
    {
      kind: 'text',
      isSmall: true,
      text:
        'Not to scale. At each line: its pair, the loop with its far end shorted, its own loss at 1 kHz, and the posts that it is on at either end, read from left to right. ' +
        'A cross in the terminal block marks the supply. Where lines meet at a station, like wires of the pair are joined.',
    },
    ...large,
    ...rows,
  ]
}

const diagram = (drawing: CircuitDrawing, name: string, title: string): readonly Block[] => [
  { kind: 'heading', text: title },
  { kind: 'drawing', heightMm: drawing.heightMm, drawing: { kind: 'circuit', drawing, name } },
]
