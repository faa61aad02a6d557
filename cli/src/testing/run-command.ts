import { readFileSync } from 'node:fs'
import { BadInput, type Command, type Io } from '../command.ts'
import { dispatch } from '../dispatch.ts'

/** What a command printed and wrote, and its exit code. */
export type Ran = {
  readonly code: number
  readonly out: string
  readonly err: string
  readonly written: Readonly<Record<string, string>>
}

/** Runs one command on files held in memory; others are read from the disk. What it writes is kept, not written. */
export const runCommand = async (
  commands: readonly Command[],
  argv: readonly string[],
  files: Readonly<Record<string, string>> = {},
): Promise<Ran> => {
  const out: string[] = []
  const err: string[] = []
  const written: Record<string, string> = {}
  const io: Io = {
    out: (text) => out.push(text),
    err: (text) => err.push(text),
    readFile: (path) => {
      const text = files[path]
      if (text !== undefined) return Promise.resolve(text)
      try {
        return Promise.resolve(readFileSync(path, 'utf8'))
      } catch {
        return Promise.reject(new BadInput(`${path}: there is no such file`))
      }
    },
    writeFile: (path, text) => {
      written[path] = text
      return Promise.resolve()
    },
  }
  const code = await dispatch(commands, argv, io)
  return { code, out: out.join('\n'), err: err.join('\n'), written }
}
