import { signal } from '@preact/signals'
import * as v from 'valibot'
import type { PaperLine } from '../compute/paper-sheet.ts'
import type { PaperStop } from '../compute/paper-stops.ts'
import { courseId } from './journal.ts'
import { keepText, keptJson } from './kept-text.ts'

const lineSchema = v.object({ green: v.string(), time: v.string(), note: v.string() })
const stopSchema = v.object({ step: v.string(), time: v.string(), why: v.string(), words: v.string() })
const sheetSchema = v.object({ lines: v.record(v.string(), lineSchema), stops: v.array(stopSchema) })

/** What is typed in from the paper of one day and not written down yet: lines by green, and steps broken off. */
export type TypedSheet = {
  readonly lines: Readonly<Record<string, PaperLine>>
  readonly stops: readonly PaperStop[]
}

const EMPTY: TypedSheet = { lines: {}, stops: [] }

/** By course and date; what was typed before the app was opened lies in the browser only. */
const typed = signal<Readonly<Record<string, TypedSheet>>>({})

const keyOf = (date: string): string => `swardwright.sheet ${courseId.value ?? ''} ${date}`

/** What is typed in for a day. It stays when the page is left, and in the browser when the app is closed, until it is written down. */
export const typedSheet = (date: string): TypedSheet => {
  const key = keyOf(date)
  return typed.value[key] ?? keptJson(key, sheetSchema) ?? EMPTY
}

/** Takes what is typed in for a day from now on. */
export const typeSheet = (date: string, { lines, stops }: TypedSheet): void => {
  const key = keyOf(date)
  const filled = Object.entries(lines).filter(([, { time, note }]) => time !== '' || note !== '')
  const sheet = { lines: Object.fromEntries(filled), stops }
  typed.value = { ...typed.value, [key]: sheet }
  keepText(key, filled.length + stops.length === 0 ? null : JSON.stringify(sheet))
}

const isSame = <T extends Readonly<Record<string, string>>>(one: T, other: T): boolean =>
  Object.entries(one).every(([name, text]) => other[name] === text)

/** Lets go of what was written down; a line that was changed meanwhile stays. */
export const dropWritten = (date: string, written: TypedSheet): void => {
  const { lines, stops } = typedSheet(date)
  const isLeft = ([green, line]: readonly [string, PaperLine]): boolean => {
    const was = written.lines[green]
    return was === undefined || !isSame(was, line)
  }
  typeSheet(date, {
    lines: Object.fromEntries(Object.entries(lines).filter(isLeft)),
    stops: stops.filter((stop) => !written.stops.some((was) => isSame(was, stop))),
  })
}

/** Puts back what was written down and is taken back, under what was typed since. */
export const putBackSheet = (date: string, written: TypedSheet): void => {
  const { lines, stops } = typedSheet(date)
  typeSheet(date, { lines: { ...written.lines, ...lines }, stops: [...written.stops, ...stops] })
}
