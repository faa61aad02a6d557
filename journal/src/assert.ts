/** Throws when an invariant of our own code is broken; never used for what a person or another device sent. */
export function assert(condition: unknown, message: string): asserts condition {
  if (!condition) throw new Error(`Invariant broken: ${message}`)
}
