/** Runs a task one at a time: asked again while it runs, it runs once more afterwards. */
export const oneAtATime = (task: () => Promise<void>): (() => Promise<void>) => {
  let running: Promise<void> | null = null
  let again = false
  const run = async (): Promise<void> => {
    do {
      again = false
      await task()
    } while (again)
  }
  return () => {
    if (running !== null) {
      again = true
      return running
    }
    running = run().finally(() => {
      running = null
    })
    return running
  }
}
