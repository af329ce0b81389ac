declare module 'magvar' {
  /** Declination, ° east, at a height in km, for a year with its fraction. */
  export function magvar(latDeg: number, lonDeg: number, heightKm: number, year: number): number
}
