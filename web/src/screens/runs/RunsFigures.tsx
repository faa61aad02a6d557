import { decimal, durationWords, figureOf, headingWords, quantityWords, unitMark } from '@swardwright/present'
import type { PassTold, RunsTold } from '../../compute/runs-told.ts'
import { Asked, Fact, Figure } from '../../parts/Figure.tsx'
import { Note } from '../../parts/Note.tsx'
import { units } from '../../state/course.ts'
import { lastDrivenOn } from '../../state/runs.ts'
import { useCourse } from '../../state/course.ts'
import { careSentences, loadFrom, reasonSentences, runRanges, stripsFrom, timeFrom } from './told.ts'
import { WORDS } from './words.ts'

const minutesOf = (told: RunsTold): number => told.told.reduce((sum, one) => sum + one.passes.timeMin, 0)

/** Heading and time, as large as they matter. */
export const RunsHead = (props: {
  readonly green: string
  readonly told: RunsTold
  readonly pass: PassTold
  readonly twelveDeg: number | undefined
}) => {
  const { told, pass, twelveDeg } = props
  const [clock = '', degrees = ''] = headingWords(pass.passes.headingDeg, twelveDeg ?? 0).split(' (')
  const { timeZone } = useCourse()
  const sentences = reasonSentences(told.reason, lastDrivenOn(props.green, told.choice.operation), {
    twelveDeg: twelveDeg ?? 0,
    timeMin: minutesOf(told),
    timeZone,
  })
  return (
    <div class="stack">
      <div class="figures">
        <Figure
          label={WORDS.heading}
          value={clock}
          range={`${degrees.replace(')', '')}, ${twelveDeg === undefined ? WORDS.twelve.north : WORDS.twelve.play}`}
        />
        <Figure
          label={WORDS.time}
          value={decimal(pass.passes.timeMin, 1)}
          unit="min"
          from={timeFrom(told, pass)}
          range={
            told.told.length < 2
              ? `${decimal(pass.passes.turnMin, 1)} min ${WORDS.turning}`
              : `${durationWords(Math.ceil(minutesOf(told)))} ${WORDS.both}`
          }
        />
      </div>
      <p class="small">{sentences.map((sentence) => `${sentence}.`).join(' ')}</p>
    </div>
  )
}

/** Counts, lengths and areas of one pass. */
export const RunsFacts = ({ told, pass }: { readonly told: RunsTold; readonly pass: PassTold }) => {
  const { passes, areas } = pass
  const area = (m2: number) => quantityWords('area', m2, units.value)
  return (
    <dl class="facts">
      <Fact word={WORDS.runs} from={stripsFrom(told, pass)}>
        {passes.runs.length}
      </Fact>
      <Fact word={WORDS.length}>
        {figureOf('distance', passes.runLengthM, units.value)} {unitMark('distance', units.value)}
      </Fact>
      <Fact word={WORDS.turns} range={`${decimal(passes.turnMin, 1)} min`}>
        {passes.turns}
      </Fact>
      <Fact word={WORDS.covered}>{area(areas.coveredM2)}</Fact>
      <Fact word={WORDS.twice}>{area(areas.coveredTwiceM2)}</Fact>
      <Fact word={WORDS.missed}>{areas.missedM2 < 0.5 ? 'nothing' : area(areas.missedM2)}</Fact>
    </dl>
  )
}

/** Where each dresser load starts and ends, in runs, and what is in it. */
export const Loads = ({ told }: { readonly told: RunsTold }) => {
  const { sand } = told
  if (sand === null) return null
  const { error } = sand
  if (error !== null)
    return (
      <Note kind="rust" word="The hopper would run dry:">
        {error.type === 'runNeedsMoreThanHopper'
          ? `run ${error.run + 1} alone needs ${decimal(error.massKg, 0)} kg, the hopper takes ${decimal(error.hopperKg, 0)} kg. Dress in two passes, or turn the heading so that runs get shorter.`
          : `${error.field} must be from ${error.min} to ${error.max} ${error.unit}.`}
      </Note>
    )
  return (
    <div class="stack">
      <div class="scroll-x">
        <table>
          <thead>
            <tr>
              <th>{WORDS.load}</th>
              <th>{WORDS.loadRuns}</th>
              <th class="number">{WORDS.loadLength}</th>
              <th class="number">{WORDS.loadMass}</th>
            </tr>
          </thead>
          <tbody>
            {sand.loads.map((load) => (
              <tr key={load.load}>
                <th scope="row">{load.load}</th>
                <td>
                  {runRanges(
                    [...Array(load.lastRun - load.firstRun + 1).keys()].map((k) => load.firstRun + 1 + k),
                  )}
                </td>
                <td class="number">{quantityWords('distance', load.lengthM, units.value)}</td>
                <td class="number">
                  <Asked from={loadFrom(sand, load.lengthM)}>{decimal(load.massKg, 0)} kg</Asked>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p class="small quiet">{WORDS.loadsLead}</p>
    </div>
  )
}

/** What to watch at the ends of runs and across the slope. */
export const Care = ({ pass }: { readonly pass: PassTold }) => {
  const sentences = careSentences(pass)
  return sentences.length === 0 ? null : (
    <Note kind="ochre" word={`${WORDS.care}:`}>
      {sentences.join(' ')}
    </Note>
  )
}
