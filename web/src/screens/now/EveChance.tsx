import { dayAgainstLevel } from '@swardwright/present'
import { useEffect } from 'preact/hooks'
import { afterPicture } from '../../parts/soon.ts'
import { useCourse } from '../../state/course.ts'
import { askRisk, risk, riskQuestion } from '../../state/risk.ts'
import { WORDS } from './words.ts'

type Told = { readonly words: string; readonly class?: string }

/** What is known of the day's chance; null where the plan opens nothing that day. */
const toldOf = (date: string, timeZone: string): Told | null => {
  const pending = { words: `${WORDS.chance}: ${WORDS.reckoning}`, class: 'quiet' }
  const failed = { words: `${WORDS.chance}: ${WORDS.notReckoned}`, class: 'ochre' }
  if (risk.pending.value) return pending
  if (risk.fault.value !== null) return failed
  const answer = risk.told.value
  if (answer === null || risk.isOld.value) return pending
  if (!answer.ok) return failed
  const day = answer.value.days.find((one) => one.date === date)
  if (day === undefined) return null
  const words = `${dayAgainstLevel(day, answer.value, timeZone)}.`
  return day.chance > answer.value.level ? { words, class: 'ochre' } : { words }
}

/** Among the reasons for go or hold: the chance of a caught green on the day over the skies that may come, beside the level. Asked for once the page is drawn. */
export const EveChance = ({ date }: { readonly date: string }) => {
  const { timeZone } = useCourse()
  useEffect(() => afterPicture(askRisk), [riskQuestion.value])
  const told = toldOf(date, timeZone)
  return told === null ? null : (
    <li class={told.class} aria-live="polite">
      {told.words} <a href="/plan#chances">{WORDS.toChances}</a>
    </li>
  )
}
