import type { Point } from '../../figure/geometry'
import { degToRad } from '../../units'
import type { Norths } from '../paper-source'

const LENGTH_MM = 8.5
/** Angles smaller than this are drawn this wide, so that they can be told apart; the figures stand in the sheet's words. */
const LEAST_DEG = 18
const MOST_DEG = 40

/** An angle of the diagram: its side is true, its size only where it can be seen. */
const shownDeg = (deg: number) =>
  Math.abs(deg) < 0.05 ? 0 : Math.sign(deg) * Math.min(MOST_DEG, Math.max(LEAST_DEG, Math.abs(deg)))

function Arrow({ deg, name, head, lengthMm }: { deg: number; name: string; head: string; lengthMm: number }) {
  const rad = degToRad(deg)
  const x = lengthMm * Math.sin(rad)
  const y = -lengthMm * Math.cos(rad)
  return (
    <>
      <path d={`M0 0V${-lengthMm}m0 0${head}`} transform={`rotate(${deg.toFixed(1)})`} />
      <text x={(x * 1.16).toFixed(2)} y={(y * 1.16 + (deg === 0 ? 0 : 0.6)).toFixed(2)} text-anchor="middle">
        {name}
      </text>
    </>
  )
}

/** True, grid and magnetic north from one foot: which lies on which side. Angles are not to scale. */
export function NorthDiagram({ norths, at: [x, y] }: { norths: Norths; at: Point }) {
  const { declination, convergenceDeg } = norths
  const magneticDeg = declination.ok ? shownDeg(declination.value.eastDeg) : undefined
  const gridDeg = convergenceDeg === undefined ? undefined : shownDeg(convergenceDeg)
  // Grid and needle on one side: the larger angle opens wider.
  const apart =
    gridDeg !== undefined && magneticDeg !== undefined && Math.abs(gridDeg - magneticDeg) < LEAST_DEG / 2
      ? Math.sign(magneticDeg || 1) * LEAST_DEG
      : 0
  return (
    <g class="north" transform={`translate(${x} ${y})`}>
      <Arrow deg={0} name="N" head="m-.8 1.6l.8 -1.6l.8 1.6" lengthMm={LENGTH_MM} />
      {gridDeg !== undefined && gridDeg !== 0 && (
        <Arrow deg={gridDeg} name="G" head="m-.6 0h1.2" lengthMm={LENGTH_MM - 3} />
      )}
      {magneticDeg !== undefined && magneticDeg !== 0 && (
        <Arrow deg={magneticDeg + apart} name="M" head="l.9 1.8" lengthMm={LENGTH_MM - 1} />
      )}
    </g>
  )
}
