import { BadInput } from './command.ts'

/** What a person is told when the folder or the database that they named can't be used. */
export const cantKeepData = (place: string, error: unknown): BadInput =>
  new BadInput(`can't keep data in ${place}: ${error instanceof Error ? error.message : String(error)}`, {
    cause: error,
  })
