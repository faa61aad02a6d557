import { measureGround } from './ground-work.ts'

/** Measured in the page that loads this. */
export const figures = measureGround(() => performance.now())
