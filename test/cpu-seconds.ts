/** Seconds of a processor that some work takes, however busy the machine is with other things. */
export function cpuSeconds(work: () => void): number {
  const before = process.cpuUsage()
  work()
  const { user, system } = process.cpuUsage(before)
  return (user + system) / 1e6
}
