import { drawCircuit } from '../drawing/circuit-drawing'
import type { Block } from '../layout/block'
import type { SheetRoom } from '../layout/paper-size'
import { circuitsIn } from '../paper-scope'
import type { PaperSource } from '../paper-source'

/** Every circuit as a diagram: stations with their sets, supply, lines with pair, ohms and dB, joints. */
export function circuitDiagram(source: PaperSource, room: SheetRoom): readonly Block[] {
  const { plan } = source
  const circuits = circuitsIn(source)
  if (circuits.length === 0) return []
  return [
    {
      kind: 'text',
      text:
        'Not to scale. Ohms: loop of the line with its far end shorted; dB: loss of the line by itself at 1 kHz. ' +
        'A cross in the terminal block marks the supply. Where lines meet at a station, like wires of the pair are joined.',
    },
    ...circuits.flatMap(({ id, name }): readonly Block[] => {
      const circuit = plan.circuits.get(id)
      if (!circuit) return []
      const drawings = drawCircuit(source, circuit, { widthMm: room.widthMm, heightMm: room.heightMm - 30 })
      return drawings.flatMap((drawing, i): readonly Block[] => [
        {
          kind: 'heading',
          text: drawings.length > 1 ? `${name}, part ${i + 1} of ${drawings.length}` : name,
        },
        {
          kind: 'drawing',
          heightMm: drawing.heightMm,
          drawing: { kind: 'circuit', drawing, name },
        },
      ])
    }),
  ]
}
