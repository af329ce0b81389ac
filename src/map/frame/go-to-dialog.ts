import { parsePlace } from '../../geo/parse-place'
import type { Bench } from '../bench'
import { questionDialog } from './question-dialog'

/** As near as the map goes to a place that it is sent to, if it is not nearer already. */
const NEAR_ZOOM = 14

/** Asks for a place by its coordinates, since there is no list of names to look in. */
export const goToDialog = ({ view, say }: Bench): HTMLDialogElement =>
  questionDialog(
    'Go where?',
    'Any usual form on WGS 84: 47.2184 N 11.9051 E, with minutes or seconds, a pair pasted from elsewhere, a grid reference as 32T PT 90812 32711, or UTM with its zone as 32T 690812 5232711.',
    [{ label: 'Place', value: '' }],
    [
      { words: 'Stay here', act: () => undefined },
      {
        words: 'Go',
        act: ([text = '']) => {
          const place = parsePlace(text)
          if (!place.ok) return place.problems[0]?.message
          const [lonDeg, latDeg] = place.value
          view.map.setView([latDeg, lonDeg], Math.max(view.map.getZoom(), NEAR_ZOOM), { animate: false })
          say('The map shows the place')
          return undefined
        },
      },
    ],
  )
