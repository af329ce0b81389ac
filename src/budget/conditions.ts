import type { Weather } from '../plan/plan'

/** What a circuit is judged in. Factors are 1 for the plan as it stands. */
export interface Conditions {
  readonly weather: Weather
  readonly wireTempC: number
  /** Every line's wire is this many times as long. */
  readonly lengthFactor: number
  /** DC volts of the supply, as a part of their nominal value. */
  readonly batteryFactor: number
  /** Open-circuit volts of hand generators and ring sources, as a part of their nominal value. */
  readonly ringFactor: number
}

export const conditionsOf = (weather: Weather, wireTempC: number): Conditions => ({
  weather,
  wireTempC,
  lengthFactor: 1,
  batteryFactor: 1,
  ringFactor: 1,
})
