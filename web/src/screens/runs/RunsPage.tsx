import {
  greenSchema,
  lonLat,
  planeAt,
  runsToGeoJson,
  runsToGpx,
  type Green,
  type Operation,
} from '@swardwright/engine'
import { clockFace, quantityWords } from '@swardwright/present'
import { useRoute } from 'preact-iso'
import { useEffect, useState } from 'preact/hooks'
import type { RunsTold } from '../../compute/runs-told.ts'
import { Select } from '../../parts/fields.tsx'
import { Fold } from '../../parts/Fold.tsx'
import { Measured } from '../../parts/Measured.tsx'
import { Note } from '../../parts/Note.tsx'
import { Page, Part } from '../../parts/Page.tsx'
import { saveFile } from '../../parts/save-file.ts'
import { compute } from '../../state/compute.ts'
import { greenCalled, units, useCourse } from '../../state/course.ts'
import { prescription } from '../../state/prescription.ts'
import { changeCourse, record } from '../../state/record.ts'
import { lastHeadings, runsTold } from '../../state/runs.ts'
import { LostGreen } from '../green/LostGreen.tsx'
import { setGreen } from '../green/GreenFacts.tsx'
import { useAsked } from './asked.ts'
import { HeadingChoice } from './HeadingChoice.tsx'
import { RunsDrawing } from './RunsDrawing.tsx'
import { Care, Loads, RunsFacts, RunsHead } from './RunsFigures.tsx'
import { choiceWords } from './told.ts'
import { WORDS } from './words.ts'
import { Deciding } from '../../parts/Deciding.tsx'
import { mayRecord } from '../../state/access.ts'

/** Hands the runs of the pass shown to the person as a file. */
const saveRuns = (green: Green, told: RunsTold, pass: number, form: 'geojson' | 'gpx'): void => {
  const origin = lonLat(green.at[0], green.at[1])
  const runs = told.told[pass]?.passes.runs
  if (!origin.ok || runs === undefined) return
  const plane = planeAt(origin.value)
  const name = `${greenCalled(green)}, ${choiceWords(told.choice)}`
  const file = `${green.id}-${told.choice.operation}-${pass + 1}`
  if (form === 'gpx') saveFile(`${file}.gpx`, 'application/gpx+xml', runsToGpx(runs, plane, name))
  else saveFile(`${file}.geojson`, 'application/geo+json', runsToGeoJson(runs, plane, name))
}

const TakeAlong = (props: { readonly green: Green; readonly told: RunsTold; readonly pass: number }) => {
  const { green, told, pass } = props
  return (
    <div class="row no-print">
      <button type="button" class="primary" onClick={() => print()}>
        {WORDS.print}
      </button>
      <button type="button" onClick={() => saveRuns(green, told, pass, 'geojson')}>
        {WORDS.geojson}
      </button>
      <button type="button" onClick={() => saveRuns(green, told, pass, 'gpx')}>
        {WORDS.gpx}
      </button>
    </div>
  )
}

/** Notes the heading that was driven, so that the next one differs. */
const Driven = (props: {
  readonly green: string
  readonly operation: Operation
  readonly headingDeg: number
}) => {
  const [isDone, setDone] = useState(false)
  const headingDeg = Number((props.headingDeg % 180).toFixed(1))
  useEffect(() => setDone(false), [props.green, props.operation, headingDeg])
  return (
    <div class="stack no-print">
      <button
        type="button"
        disabled={isDone}
        onClick={() => {
          const { green, operation } = props
          void record('runsDriven', { green, operation, headingDeg }).then(() => setDone(true))
        }}
      >
        {WORDS.driven}
      </button>
      <p class="small quiet" role="status">
        {isDone ? WORDS.drivenDone : WORDS.drivenHint}
      </p>
    </div>
  )
}

const AboutGreen = ({ green }: { readonly green: Green }) => {
  const { slope } = green
  const clear = (field: 'playDeg' | 'slope') =>
    void changeCourse({ part: 'greens', do: 'set', id: green.id, fields: {}, clear: [field] })
  const setSlope = (fields: Partial<NonNullable<Green['slope']>>) =>
    void setGreen(green, { slope: { percent: 0, fallDeg: 0, ...slope, ...fields } })
  return (
    <div class="no-print">
      <Fold summary={WORDS.about}>
        {() => (
          <div class="fields">
            <Measured
              schema={greenSchema}
              path={['playDeg']}
              label={WORDS.play12}
              hint={WORDS.play12Hint}
              value={green.playDeg ?? null}
              onValue={(playDeg) => void setGreen(green, { playDeg })}
              onEmpty={() => clear('playDeg')}
            />
            <Measured
              schema={greenSchema}
              path={['slope', 'percent']}
              label={WORDS.slope}
              value={slope?.percent ?? null}
              onValue={(percent) => setSlope({ percent })}
              onEmpty={() => clear('slope')}
            />
            <Measured
              schema={greenSchema}
              path={['slope', 'fallDeg']}
              label={WORDS.fall}
              hint={WORDS.fallHint}
              value={slope?.fallDeg ?? null}
              onValue={(fallDeg) => setSlope({ fallDeg })}
              onEmpty={() => clear('slope')}
            />
          </div>
        )}
      </Fold>
    </div>
  )
}

const Runs = (props: {
  readonly green: Green
  readonly told: RunsTold
  readonly ask: ReturnType<typeof useAsked>[1]
}) => {
  const { green, told, ask } = props
  const [wanted, setPass] = useState(0)
  const pass = Math.min(wanted, told.told.length - 1)
  const one = told.told[pass]
  const firstDeg = told.told[0]?.passes.headingDeg
  if (one === undefined || firstDeg === undefined) return null
  const twelveDeg = green.playDeg
  return (
    <div class="columns main-left">
      <div class="stack">
        <p class="print-only">
          {choiceWords(told.choice)}. {clockFace(one.passes.headingDeg, twelveDeg ?? 0)}.
        </p>
        {told.isApproximate ? (
          <Note kind="ochre" word="Rough:">
            {WORDS.approximate}{' '}
            <a href={`/green/${encodeURIComponent(green.id)}/outline`}>{WORDS.drawOutline}</a>
          </Note>
        ) : null}
        <RunsDrawing
          name={greenCalled(green)}
          told={told}
          twelveDeg={twelveDeg ?? 0}
          pass={pass}
          onPass={setPass}
        />
      </div>
      <div class="stack">
        <RunsHead green={green.id} told={told} pass={one} twelveDeg={twelveDeg} />
        <Care pass={one} />
        <RunsFacts told={told} pass={one} />
        {told.sand === null ? null : (
          <Part title={WORDS.loads}>
            <Loads told={told} />
          </Part>
        )}
        <div>
          <HeadingChoice told={told} twelveDeg={twelveDeg ?? 0} ask={ask} />
          <Deciding>
            <AboutGreen green={green} />
          </Deciding>
        </div>
        {mayRecord.value ? (
          <Driven green={green.id} operation={told.choice.operation} headingDeg={firstDeg} />
        ) : null}
        <TakeAlong green={green} told={told} pass={pass} />
      </div>
    </div>
  )
}

/** The runs of each machine over one green: where it starts, in which order it goes, how long it takes, and a sheet to take along. */
export const RunsPage = () => {
  const { params } = useRoute()
  const course = useCourse()
  const [asked, ask] = useAsked()
  const green = course.greens.find((one) => one.id === params['id'])
  const prescribed = prescription.value
  const last = JSON.stringify(lastHeadings(params['id'] ?? ''))
  useEffect(() => {
    if (green === undefined || prescribed === null) runsTold.clear()
    else
      runsTold.ask(() =>
        compute('runs', {
          course,
          prescription: prescribed,
          green: green.id,
          lastDeg: lastHeadings(green.id),
          ...asked,
        }),
      )
  }, [course, prescribed, params['id'], last, asked.key, asked.headingDeg, asked.turnDeg])
  useEffect(() => () => runsTold.clear(), [params['id']])
  if (green === undefined) return <LostGreen />
  const told = runsTold.value.value
  return (
    <Page
      title={WORDS.title(greenCalled(green))}
      over={
        <>
          <a href={`/green/${encodeURIComponent(green.id)}`}>{WORDS.back}</a> ·{' '}
          {quantityWords('area', green.areaM2, units.value)}
        </>
      }
      lead={WORDS.lead}
    >
      {told === null ? (
        <p role="status">
          {prescribed === null || !runsTold.pending.value ? (
            <>
              {WORDS.noPrescription} <a href="/prescription">{WORDS.toPrescription}</a>
            </>
          ) : (
            WORDS.working
          )}
        </p>
      ) : (
        <div class="stack">
          <div class="no-print">
            <Select
              label={WORDS.work}
              value={told.choice.key}
              options={told.choices.map((choice) => ({ value: choice.key, label: choiceWords(choice) }))}
              onValue={(key) => ask({ key, headingDeg: null, turnDeg: null })}
            />
          </div>
          <Runs green={green} told={told} ask={ask} />
        </div>
      )}
    </Page>
  )
}
