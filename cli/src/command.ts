/** Where a command reads and writes; the real process in `main.ts`, plain strings in tests. */
export type Io = {
  readonly out: (text: string) => void
  readonly err: (text: string) => void
  /** Text of a file; throws a `BadInput` that names it when it can't be read. */
  readonly readFile: (path: string) => Promise<string>
  readonly writeFile: (path: string, text: string) => Promise<void>
}

/** One command of the grammar: noun, then verb, then what it works on. */
export type Command = {
  readonly noun: string
  /** Empty for a command of one word, such as `serve`. */
  readonly verb: string
  /** What follows the two words, e.g. `NAME JSON`. */
  readonly usage: string
  /** One line for the list of commands. */
  readonly summary: string
  /** Runs with what follows the two words. Returns the exit code: 0 done, 1 done with findings, 2 bad input. Throws `BadInput` for what a person typed wrong. */
  readonly run: (argv: readonly string[], io: Io) => Promise<number>
}

/** Something typed that can't be used; its message is one clear sentence. Ends the command with exit code 2. */
export class BadInput extends Error {}
