import type { Problem } from '@swardwright/journal'
import { TakePhoto } from './TakePhoto.tsx'
import { WORDS } from './words.ts'

/** Right after a problem was told: the way to add a photo of it. `green`: where the person works. */
export const PhotoOfProblem = (props: { readonly problem: Problem; readonly green: string | null }) => {
  const { problem } = props
  const green = problem.value.problem === 'green' ? problem.value.green : props.green
  return (
    <TakePhoto
      takeLabel={WORDS.ofProblem}
      of={{ purpose: 'problem', about: problem.entry, ...(green === null ? {} : { green }) }}
    />
  )
}
