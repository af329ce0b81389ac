import { signal } from '@preact/signals'
import type { PlaceForm } from '../geo/place-text'
import type { UnitSystem } from '../words/units'

export type Theme = 'system' | 'light' | 'dark' | 'night'

/** How one person likes to work, on whatever plan: kept in this browser, and no part of any plan. */
export const createPreferences = () => ({
  units: signal<UnitSystem>('metric'),
  theme: signal<Theme>('system'),
  /** How places are written; read they are in any form. */
  placeForm: signal<PlaceForm>('decimal'),
  /** Whether a single letter, digit or sign does something: not for hands that hit keys unasked, nor for speech. */
  letterKeys: signal<'on' | 'off'>('on'),
  /** The steps that lead to a first plan: shown until they are done, or put away. */
  firstSteps: signal<'shown' | 'away'>('shown'),
})
