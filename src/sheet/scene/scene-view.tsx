import type { ComponentChildren } from 'preact'
import { useContext } from 'preact/hooks'
import { isolated } from '../../isolated'
import { OfPlan, PlanPicture } from '../plan-picture'
import type { Scene, Shape } from './scene'

const mm = (value: number) => value.toFixed(2)

function Revision(): ComponentChildren {
  const revision = useContext(OfPlan)?.revision.value
  return revision ? ` · revision ${isolated(revision)}` : null
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
      return (
        <path
          d={
            shape.points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${mm(x)} ${mm(y)}`).join('') +
            (shape.isClosed ? 'Z' : '')
          }
          style={{
            fill: shape.filling === 'ink' ? '#000' : shape.filling === 'paper' ? '#fff' : 'none',
            stroke: shape.strokeMm > 0 ? '#000' : 'none',
            strokeWidth: shape.strokeMm,
            ...(shape.dashMm && { strokeDasharray: shape.dashMm.join(' ') }),
          }}
        />
      )
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
      {scene.shapes.map((shape, i) => (
        <ShapeView key={i} shape={shape} />
      ))}
    </svg>
  )
}
