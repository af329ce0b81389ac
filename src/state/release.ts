/** The release of the program that is open, and what of it is kept on this machine. */
export interface Release {
  /** As the page says it; empty before it is asked. */
  readonly name: string
  /**
   * `coming`: being kept · `ready`: every file of it is kept, as it was built · `not whole`: a file has not come as it was built ·
   * `plain http`: browsers keep nothing for such an address · `not offered`: this browser keeps no programs here ·
   * `one file`: the page is the whole program, opened from a disk
   */
  readonly offline: 'coming' | 'ready' | 'not whole' | 'plain http' | 'not offered' | 'one file'
  /** Whether a newer one waits, whole, for the windows of this one to be closed. */
  readonly isNewerReady: boolean
}
