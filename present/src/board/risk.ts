import type { BoardBand, BoardDay, BoardGreen, BoardSpan, BoardState } from './board-input.ts'
import { isOnDay } from './board-input.ts'

/** A stretch in which a green lies open where it must not. */
export type Caught = BoardSpan & { readonly green: number; readonly band: BoardBand['kind'] }

/** The green of a day that finishes with the least time before the next rain or dark. */
export type Tightest = {
  readonly green: number
  readonly finishMs: number
  readonly stopMs: number
  readonly spareMin: number
}

const MINUTE_MS = 60_000

/** Work in hand: an opened, cleared or dressed green. */
const inHand = (state: BoardState): boolean => state.state !== 'finished'

/** Rain catches every green in hand; dark only one that is not yet cleared (DESIGN: a cleared green may stand a dry night). */
const catches = (band: BoardBand, state: BoardState): boolean =>
  band.kind === 'rain' ? inHand(state) : band.kind === 'dusk' && state.state === 'opened'

/** Where greens lie open in rain or dark, so that the eye finds it first. */
export const caughtOn = (day: BoardDay, greens: readonly BoardGreen[]): readonly Caught[] =>
  greens.flatMap((green, index) =>
    green.states.flatMap((state) =>
      day.bands
        .filter((band) => catches(band, state) && isOnDay(state, band) && isOnDay(state, day))
        .map((band) => ({
          green: index,
          band: band.kind,
          fromMs: Math.max(state.fromMs, band.fromMs),
          toMs: Math.min(state.toMs, band.toMs),
        })),
    ),
  )

/** The tightest green of a day; null when nothing is finished that day or nothing threatens. */
export const tightestOn = (day: BoardDay, greens: readonly BoardGreen[]): Tightest | null => {
  const stops = day.bands.filter((band) => band.kind === 'rain' || band.kind === 'dusk')
  const found = greens.flatMap((green, index) => {
    const finishMs = green.states.find((state) => state.state === 'finished')?.fromMs
    if (finishMs === undefined || finishMs < day.fromMs || finishMs >= day.toMs) return []
    const next = stops.filter((stop) => stop.fromMs >= finishMs).map((stop) => stop.fromMs)
    if (next.length === 0) return []
    const stopMs = Math.min(...next)
    return [{ green: index, finishMs, stopMs, spareMin: Math.round((stopMs - finishMs) / MINUTE_MS) }]
  })
  return found.reduce<Tightest | null>(
    (least, one) => (least === null || one.spareMin < least.spareMin ? one : least),
    null,
  )
}
