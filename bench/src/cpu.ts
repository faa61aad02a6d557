/** Processor seconds since a mark, of all threads of this process. */
export const cpuSince = (mark: NodeJS.CpuUsage): number => {
  const { user, system } = process.cpuUsage(mark)
  return (user + system) / 1e6
}
