import { clock, dateAt, dayWords } from '@swardwright/present'
import type { Facts } from '@swardwright/journal'
import { WORDS } from './words.ts'

/** A photo as its entry tells it. */
export type PhotoTold = Facts['photos'][number]

/** Photos of one day, the latest first. */
export type PhotoDay = { readonly date: string; readonly photos: readonly PhotoTold[] }

/** Photos by day, the latest day first. */
export const photosByDay = (photos: readonly PhotoTold[], timeZone: string): readonly PhotoDay[] => {
  const days = new Map<string, PhotoTold[]>()
  for (const photo of photos.toSorted((a, b) => Date.parse(b.at) - Date.parse(a.at))) {
    const date = dateAt(photo.at, timeZone)
    days.set(date, [...(days.get(date) ?? []), photo])
  }
  return [...days].map(([date, ofDay]) => ({ date, photos: ofDay }))
}

/** When a photo was taken and by whom: ‘Tue 11 Aug 2026, 06:30, Maren’. */
export const photoWhen = ({ at, author }: PhotoTold, timeZone: string): string => {
  const date = dateAt(at, timeZone)
  return `${dayWords(date)} ${date.slice(0, 4)}, ${clock(at, timeZone)}, ${author}`
}

/** What a photo shows, for those who don’t see it. */
export const photoAlt = (photo: PhotoTold, greenName: string | null, timeZone: string): string => {
  const { purpose, words } = photo.value
  const what = `${WORDS.purposes[purpose]}${greenName === null ? '' : `, ${greenName}`}`
  return `${what}: photo of ${photoWhen(photo, timeZone)}${words === undefined ? '' : `. ${words}`}`
}
