import { greenSchema, type Green } from '@swardwright/engine'
import { decimal, dayWords, listed } from '@swardwright/present'
import { TextField } from '../../parts/fields.tsx'
import { Fold } from '../../parts/Fold.tsx'
import { Measured } from '../../parts/Measured.tsx'
import { today } from '../../state/clock.ts'
import { setGreen } from './GreenFacts.tsx'
import { WORDS } from './words.ts'

type Test = Green['organicTests'][number]
type Layer = Test['layers'][number]

const FIRST_LAYERS: readonly Layer[] = [
  { fromMm: 0, toMm: 20, organicPercent: 5 },
  { fromMm: 20, toMm: 40, organicPercent: 3 },
  { fromMm: 40, toMm: 60, organicPercent: 2 },
]

/** Laboratories cut and report their samples in millimetres, whatever unit the club reads depth in. */
const inWords = (test: Test): string =>
  listed(
    test.layers.map(
      ({ fromMm, toMm, organicPercent }) =>
        `${decimal(fromMm, 0)} to ${decimal(toMm, 0)} mm: ${decimal(organicPercent, 1)} %`,
    ),
  )

const LayerFields = (props: {
  readonly layer: Layer
  readonly onLayer: (fields: Partial<Layer>) => void
}) => {
  const field = (name: keyof Layer, label: string) => (
    <Measured
      schema={greenSchema}
      path={['organicTests', '0', 'layers', '0', name]}
      label={label}
      value={props.layer[name]}
      onValue={(value) => props.onLayer({ [name]: value })}
    />
  )
  return (
    <div class="fields">
      {field('fromMm', WORDS.from)}
      {field('toMm', WORDS.to)}
      {field('organicPercent', WORDS.percent)}
    </div>
  )
}

const TestForm = (props: { readonly test: Test; readonly onTest: (test: Test) => void }) => {
  const { test, onTest } = props
  const last = test.layers.at(-1)
  return (
    <>
      <div class="fields">
        <TextField
          label={WORDS.testDate}
          type="date"
          value={test.date}
          onValue={(date) => date !== '' && onTest({ ...test, date })}
        />
        <TextField
          label={WORDS.laboratory}
          value={test.laboratory ?? ''}
          onValue={(laboratory) =>
            laboratory.trim() !== '' && onTest({ ...test, laboratory: laboratory.trim() })
          }
        />
      </div>
      {test.layers.map((layer, at) => (
        <LayerFields
          key={at}
          layer={layer}
          onLayer={(fields) =>
            onTest({
              ...test,
              layers: test.layers.map((one, index) => (index === at ? { ...one, ...fields } : one)),
            })
          }
        />
      ))}
      <button
        type="button"
        class="thin"
        onClick={() =>
          last !== undefined &&
          onTest({
            ...test,
            layers: [
              ...test.layers,
              { fromMm: last.toMm, toMm: last.toMm + 20, organicPercent: last.organicPercent },
            ],
          })
        }
      >
        {WORDS.addLayer}
      </button>
    </>
  )
}

/** Laboratory results of a green, newest first. */
export const OrganicTests = ({ green }: { readonly green: Green }) => {
  const tests = green.organicTests
  const save = (changed: readonly Test[]) => void setGreen(green, { organicTests: [...changed] })
  const newestFirst = tests
    .map((test, at) => ({ test, at }))
    .toSorted((a, b) => (a.test.date < b.test.date ? 1 : -1))
  return (
    <div class="stack">
      {tests.length === 0 ? <p>{WORDS.testsNone}</p> : null}
      <div>
        {newestFirst.map(({ test, at }) => (
          <Fold
            key={at}
            summary={
              <span>
                {dayWords(test.date)} {test.date.slice(0, 4)} <span class="quiet small">{inWords(test)}</span>
              </span>
            }
          >
            {() => (
              <>
                <TestForm
                  test={test}
                  onTest={(changed) => save(tests.map((one, index) => (index === at ? changed : one)))}
                />
                <button
                  type="button"
                  class="thin"
                  onClick={() => save(tests.filter((_, index) => index !== at))}
                >
                  {WORDS.removeTest}
                </button>
              </>
            )}
          </Fold>
        ))}
      </div>
      <button
        type="button"
        class="thin"
        onClick={() => save([...tests, { date: today.value, layers: [...FIRST_LAYERS] }])}
      >
        {WORDS.addTest}
      </button>
    </div>
  )
}
