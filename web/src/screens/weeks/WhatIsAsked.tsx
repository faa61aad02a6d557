import { WEEKS_LIMITS } from '@swardwright/engine'
import { NumberField } from '../../parts/NumberField.tsx'
import { TextField } from '../../parts/fields.tsx'
import { reckonWeeksNow, weeksChoices } from '../../state/weeks.ts'
import { ABOUT, ABOUT_WORDS, MEANING, WORDS } from './words.ts'

/** Half a year of weeks: with a candidate a day that is as many as the engine takes. */
const MOST_WEEKS = 26

/** From when, how many weeks, days and years; and what the figures mean. */
export const WhatIsAsked = () => {
  const choices = weeksChoices.value
  const set = (more: Partial<typeof choices>): void => {
    weeksChoices.value = { ...weeksChoices.value, ...more }
  }
  const count = (
    key: 'weeks' | 'days' | 'years' | 'everyDays',
    words: { readonly label: string; readonly max: number; readonly hint?: string },
  ) => (
    <NumberField {...words} unit="" value={choices[key]} min={1} whole onValue={(n) => set({ [key]: n })} />
  )
  return (
    <>
      <div class="fields">
        <TextField
          label={WORDS.from}
          type="date"
          hint={WORDS.fromHint}
          value={choices.from ?? ''}
          onValue={(date) => set({ from: date === '' ? null : date })}
        />
        {count('weeks', { label: WORDS.weeks, max: MOST_WEEKS })}
        {count('days', { label: WORDS.days, max: WEEKS_LIMITS.days })}
        {count('everyDays', { label: WORDS.every, max: WEEKS_LIMITS.days, hint: WORDS.everyHint })}
        {count('years', { label: WORDS.years, max: WEEKS_LIMITS.years })}
      </div>
      <button type="button" onClick={() => void reckonWeeksNow()}>
        {WORDS.again}
      </button>
      {ABOUT.map((about) => (
        <div key={about} class="tight">
          <h3>{ABOUT_WORDS[about]}</h3>
          {MEANING[about].map((line) => (
            <p key={line} class="small">
              {line}
            </p>
          ))}
        </div>
      ))}
      <p class="small">{WORDS.order}</p>
    </>
  )
}
