import { signal } from '@preact/signals'

/**
 * What the browser promises for what is recorded here. `lasting`: it is kept until somebody removes it. `while there is room`: the browser may
 * clear it when the device runs short. `unknown`: it was not asked yet, or has no answer.
 */
export type Lasting = 'lasting' | 'while there is room' | 'unknown'

/** What the browser promises for what is recorded here. */
export const lasting = signal<Lasting>('unknown')

const said = (promised: boolean): Lasting => (promised ? 'lasting' : 'while there is room')

/** Plain http has no such promise to give, whatever the types of the platform say. */
const manager = (): StorageManager | null => ('storage' in navigator ? navigator.storage : null)

/** Reads the promise given before, without asking for one. */
export const readLasting = async (): Promise<void> => {
  const promised = await manager()
    ?.persisted()
    .catch(() => undefined)
  if (promised === true) lasting.value = 'lasting'
}

/** Asks the browser to keep what is recorded here. Some ask the person in turn, so this waits until there is something to lose. */
export const askToLast = async (): Promise<void> => {
  if (lasting.value === 'lasting') return
  const promised = await manager()
    ?.persist()
    .catch(() => undefined)
  if (promised !== undefined) lasting.value = said(promised)
}
