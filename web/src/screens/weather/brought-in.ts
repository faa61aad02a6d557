import type { HistoryOutcome } from '@swardwright/journal'
import type { callServer } from '../../journal/server.ts'
import { courseId } from '../../state/journal.ts'
import { askHistory } from '../../state/served-weather.ts'
import { WORDS } from './words.ts'

type Answer = Awaited<ReturnType<typeof callServer<'uploadHistory' | 'fetchHistory'>>>

/** Has the server take a record in, then reads anew what it holds; says why where it would not or could not. */
export const broughtIn = async (bring: (course: string) => Promise<Answer>): Promise<HistoryOutcome> => {
  const course = courseId.value
  if (course === null) return { kept: null, why: WORDS.noServer }
  const answer = await bring(course)
  if (!answer.ok) return { kept: null, why: answer.why === 'away' ? WORDS.noServer : answer.words }
  await askHistory()
  return answer.value
}
