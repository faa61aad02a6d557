import type { Work } from './work.ts'

/** Names of what the worker can be asked. */
export type Job = keyof Work

/** One question to the worker. `id` ties answers to it. */
export type Ask = { readonly id: number; readonly job: Job; readonly input: unknown }

/** What comes back: progress any number of times, then one answer or one fault, or word that the job's code could not be fetched. */
export type Reply =
  | { readonly id: number; readonly kind: 'progress'; readonly progress: unknown }
  | { readonly id: number; readonly kind: 'answer'; readonly output: unknown }
  | { readonly id: number; readonly kind: 'fault'; readonly message: string }
  | { readonly id: number; readonly kind: 'missing' }
