import { computed, signal } from '@preact/signals'
import { dateAt } from '@swardwright/present'
import { facts } from './journal.ts'

const TICK_MS = 20_000

/** The device’s clock, epoch milliseconds, renewed while the page is open: for how old a thing is. */
export const realMs = signal(Date.now())

/** Keeps the clock going. */
export const startClock = (): void => {
  setInterval(() => {
    realMs.value = Date.now()
  }, TICK_MS)
}

/** The moment that the pages go by: the course’s own held moment, else the device’s clock. */
export const nowMs = computed(() => {
  const held = facts.value.course?.now ?? null
  return held === null ? realMs.value : Date.parse(held)
})

/** The course’s calendar day now. */
export const today = computed(() => dateAt(nowMs.value, facts.value.course?.timeZone ?? 'UTC'))
