import { readForecastText } from '@swardwright/engine'
import type { BodyOf } from '@swardwright/journal'
import { forecastErrorWords } from '@swardwright/present'
import { useState } from 'preact/hooks'
import { FileField } from '../../parts/FileField.tsx'
import { Note } from '../../parts/Note.tsx'
import { planNow } from '../../state/plan.ts'
import { record } from '../../state/record.ts'
import { WORDS } from './words.ts'

/** Reads a forecast file; writes it down only when it can be used. Answers with a sentence when it cannot. */
const bringIn = async (file: File): Promise<string | null> => {
  const text = await file.text()
  const read = readForecastText(text)
  if (!read.ok) return forecastErrorWords(read.error)
  const body: BodyOf<'forecastReceived'> = {
    source: 'file',
    name: file.name.slice(0, 200),
    // It was read above, so it is JSON of the open hourly shape.
    forecast: JSON.parse(text) as BodyOf<'forecastReceived'>['forecast'],
  }
  await record('forecastReceived', body)
  await planNow()
  return null
}

/** Brings in an hourly forecast from a file. */
export const ForecastFile = () => {
  const [wrong, setWrong] = useState<string | null>(null)
  return (
    <div class="tight">
      <FileField
        label={WORDS.forecastFile}
        accept=".json"
        onFile={(file) => void bringIn(file).then(setWrong)}
      />
      {wrong === null ? null : (
        <Note kind="rust" word="Not read:" live>
          {wrong}.
        </Note>
      )}
    </div>
  )
}
