import type { Line } from '../../plan/plan'
import { rerouteLine } from '../../plan/route-edits'
import { type LineProfile, lineProfile } from '../../report/line-profile'
import type { ReportLine } from '../../report/report'
import type { Store } from '../../state/store'
import { STEEP_PCT } from '../../terrain/profile'
import { formatCount, formatLengthM } from '../../words/units'
import { Question } from '../question'
import { CrossingList } from './crossing-list'
import { OpenElevations } from './open-elevations'
import { ProfileView } from './profile-view'
import { RouteOffer } from './route-offer'

/** The ground that a line crosses: in a sentence, and drawn. */
export function LineGround({ store, line, measured }: { store: Store; line: Line; measured: ReportLine }) {
  const wire = store.catalog.value.wires.get(line.wire)
  const profile = lineProfile(store.plan.value, line, measured, wire, store.ground.value)
  return (
    <Question ask="What ground does it cross?">
      {profile ? (
        <>
          <p>{climbSentence(profile, store)}</p>
          <ProfileView store={store} line={line.id} profile={profile} />
        </>
      ) : (
        <>
          <p>
            No height is known here, so its length is the map’s. Open an elevation file (GeoTIFF, or SRTM
            .hgt) of this country, or drop one on the page.
          </p>
          <OpenElevations store={store} />
        </>
      )}
      <CrossingList store={store} line={measured} />
      <RouteOffer
        store={store}
        from={line.from}
        to={line.to}
        drawn={line.id}
        lead={(plan, way) => ({ plan: rerouteLine(plan, line.id, way), line: line.id })}
      />
    </Question>
  )
}

function climbSentence({ ground, legs }: LineProfile, store: Store): string {
  const length = (m: number) => formatLengthM(m, store.units.value)
  const steep = legs.flatMap((leg, i) => (leg.isSteep ? [i + 1] : []))
  const unknown = legs.filter(({ meanPct }) => meanPct === undefined).length
  const parts = [
    `Climbs ${length(ground.climbM)} and falls ${length(ground.descentM)}, between ${length(ground.lowestM ?? 0)} and ${length(ground.highestM ?? 0)} high.`,
    steep.length > 0 &&
      `${steep.length === 1 ? 'Leg' : 'Legs'} ${steep.join(', ')} ${steep.length === 1 ? 'has' : 'have'} a stretch of ${STEEP_PCT} % or more: hard going on foot, shut to wheels.`,
    unknown > 0 && `Of ${formatCount(unknown, 'leg')} not every height is known.`,
  ]
  return parts.filter(Boolean).join(' ')
}
