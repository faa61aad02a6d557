import { readFile, writeFile } from 'node:fs/promises'
import { BadInput, type Io } from './command.ts'

const isErrno = (error: unknown): error is NodeJS.ErrnoException => error instanceof Error && 'code' in error

const WHY: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EISDIR: 'it is a folder',
  EACCES: 'it may not be opened',
}

const opening = async <T>(path: string, work: Promise<T>): Promise<T> => {
  try {
    return await work
  } catch (error) {
    if (isErrno(error)) throw new BadInput(`${path}: ${WHY[error.code ?? ''] ?? error.message}`)
    throw error
  }
}

/** Reads and writes of the real process. */
export const processIo: Io = {
  out: (text) => void process.stdout.write(`${text}\n`),
  err: (text) => void process.stderr.write(`${text}\n`),
  readFile: (path) => opening(path, readFile(path, 'utf8')),
  writeFile: (path, text) => opening(path, writeFile(path, text)),
}
