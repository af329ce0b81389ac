import type { ComponentChildren } from 'preact'
import { useContext } from 'preact/hooks'
import { isolated } from '../../isolated'
import { CodeAt, OfPlan, PlanPicture } from '../plan-picture'
import type { Scene, Shape } from './scene'

const mm = (value: number) => value.toFixed(2)

function Revision(): ComponentChildren {
  const revision = useContext(OfPlan)?.revision.value
  return revision ? ` · revision ${isolated(revision)}` : null
}

/** Ways with one look. */
function Ways({ ways }: { ways: readonly Way[] }) {
  const { filling, strokeMm, dashMm } = ways[0]!
  const pathOf = ({ points, isClosed }: Way) =>
    points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${mm(x)} ${mm(y)}`).join('') + (isClosed ? 'Z' : '')
  return (
    <path
      d={ways.map(pathOf).join('')}
      style={{
        fill: filling === 'ink' ? '#000' : filling === 'paper' ? '#fff' : 'none',
        stroke: strokeMm > 0 ? '#000' : 'none',
        strokeWidth: strokeMm,
        ...(dashMm && { strokeDasharray: dashMm.join(' ') }),
      }}
    />
  )
}

type Way = Extract<Shape, { kind: 'way' }>

const isBareStroke = (shape: Shape): shape is Way => shape.kind === 'way' && !shape.filling

/** Strokes of one look under one key: each look becomes one element. What is filled stays in its place, for it may cover what came before it. */
function strokesByLook(shapes: readonly Shape[]): readonly (readonly Way[])[] {
  const looks = new Map<string, Way[]>()
  for (const shape of shapes) {
    if (!isBareStroke(shape)) continue
    const look = `${shape.strokeMm} ${shape.dashMm?.join(' ')}`
    const own = looks.get(look)
    if (own) own.push(shape)
    else looks.set(look, [shape])
  }
  return [...looks.values()]
}

function ShapeView({ shape }: { shape: Shape }) {
  switch (shape.kind) {
    case 'text':
      return (
        <text
          x={mm(shape.at[0])}
          y={mm(shape.at[1])}
          text-anchor={shape.anchor}
          style={{ fontSize: `${mm(shape.sizeMm)}px`, ...(shape.isBold && { fontWeight: 700 }) }}
        >
          {shape.text}
          {shape.isRevised && <Revision />}
        </text>
      )
    case 'way':
      return <Ways ways={[shape]} />
    case 'disc':
      return (
        <circle
          cx={mm(shape.at[0])}
          cy={mm(shape.at[1])}
          r={shape.radiusMm}
          style={{ fill: shape.filling === 'ink' ? '#000' : '#fff', strokeWidth: shape.strokeMm }}
        />
      )
    case 'picture':
      return <PlanPicture at={shape.at} sizeMm={shape.sizeMm} />
    case 'code':
      return <CodeAt at={shape.at} sizeMm={shape.sizeMm} picture={shape.picture} />
  }
}

/** A scene in black on white. */
export function SceneView({ scene }: { scene: Scene }) {
  return (
    <svg
      class="scene-view"
      viewBox={`0 0 ${mm(scene.widthMm)} ${mm(scene.heightMm)}`}
      role="img"
      aria-label={scene.label}
    >
      {strokesByLook(scene.shapes).map((ways, i) => (
        <Ways key={i} ways={ways} />
      ))}
      {scene.shapes.map((shape, i) => (isBareStroke(shape) ? null : <ShapeView key={i} shape={shape} />))}
    </svg>
  )
}
