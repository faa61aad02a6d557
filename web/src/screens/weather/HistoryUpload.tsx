import { DATE_FORMATS, type HistoryMap } from '@swardwright/engine'
import type { HistoryOutcome, RouteArguments } from '@swardwright/journal'
import { useState } from 'preact/hooks'
import { FileField } from '../../parts/FileField.tsx'
import { Choice, Select, TextField } from '../../parts/fields.tsx'
import { callServer } from '../../journal/server.ts'
import { broughtIn } from './brought-in.ts'
import type { BroughtIn } from './OutcomeNote.tsx'
import { HISTORY_WORDS as W, MAP_FIELDS } from './words.ts'

type Upload = RouteArguments<'uploadHistory'>['body']
type Field = (typeof MAP_FIELDS)[number][0]

/** What a person says of an own layout. */
type Own = {
  readonly names: Readonly<Partial<Record<Field, string>>>
  readonly rainUnit: 'mm' | 'in'
  readonly temperatureUnit: 'C' | 'F'
  readonly dateFormat: HistoryMap['dateFormat']
  readonly delimiter: HistoryMap['delimiter']
}

const NEW_LAYOUT: Own = {
  names: {},
  rainUnit: 'mm',
  temperatureUnit: 'C',
  dateFormat: 'yyyy-mm-dd',
  delimiter: ',',
}

/** Exact: an inch is 25.4 mm; Celsius is (F - 32) x 5 / 9. */
const RAIN = { mm: {}, in: { factor: 25.4 } } as const
const TEMPERATURE = { C: {}, F: { factor: 5 / 9, offset: -160 / 9 } } as const

const PLAIN: readonly Field[] = ['windMPerS', 'humidityPercent', 'radiationMJPerM2', 'sunshineHours']

const mapOf = ({ names, rainUnit, temperatureUnit, dateFormat, delimiter }: Own): Upload['columns'] => ({
  date: names.date ?? '',
  rainMm: { column: names.rainMm ?? '', ...RAIN[rainUnit] },
  minC: { column: names.minC ?? '', ...TEMPERATURE[temperatureUnit] },
  maxC: { column: names.maxC ?? '', ...TEMPERATURE[temperatureUnit] },
  ...Object.fromEntries(
    PLAIN.flatMap((field) => {
      const column = names[field] ?? ''
      return column === '' ? [] : [[field, { column }]]
    }),
  ),
  dateFormat,
  delimiter,
})

const FIELD_UNITS: Readonly<Partial<Record<Field, string>>> = {
  windMPerS: 'm/s',
  humidityPercent: '%',
  radiationMJPerM2: 'MJ/m²',
  sunshineHours: 'hours',
}

const OwnLayout = ({ own, onOwn }: { readonly own: Own; readonly onOwn: (own: Own) => void }) => (
  <div class="stack">
    <div class="fields">
      {MAP_FIELDS.map(([field, label, needed]) => (
        <TextField
          key={field}
          label={FIELD_UNITS[field] === undefined ? label : `${label} (${FIELD_UNITS[field]})`}
          hint={needed ? 'its column' : 'its column, if any'}
          value={own.names[field] ?? ''}
          onValue={(name) => onOwn({ ...own, names: { ...own.names, [field]: name.trim() } })}
        />
      ))}
      <Select
        label="Rain in"
        value={own.rainUnit}
        options={[
          { value: 'mm', label: 'mm' },
          { value: 'in', label: 'inches' },
        ]}
        onValue={(rainUnit) => onOwn({ ...own, rainUnit })}
      />
      <Select
        label="Temperature in"
        value={own.temperatureUnit}
        options={[
          { value: 'C', label: '°C' },
          { value: 'F', label: '°F' },
        ]}
        onValue={(temperatureUnit) => onOwn({ ...own, temperatureUnit })}
      />
      <Select
        label="Days written"
        value={own.dateFormat}
        options={DATE_FORMATS.map((value) => ({ value, label: value }))}
        onValue={(dateFormat) => onOwn({ ...own, dateFormat })}
      />
      <Select
        label="Between columns"
        value={own.delimiter}
        options={[
          { value: ',', label: 'comma' },
          { value: ';', label: 'semicolon' },
          { value: '\t', label: 'tab' },
          { value: '|', label: 'bar' },
        ]}
        onValue={(delimiter) => onOwn({ ...own, delimiter })}
      />
    </div>
  </div>
)

/** Reads the file here, sends it to the server, and shows what came of it. */
const send = (upload: Upload): Promise<HistoryOutcome> =>
  broughtIn((course) => callServer('uploadHistory', { params: { course }, body: upload }))

/** Brings a file of daily weather in. */
export const HistoryUpload = ({ onOutcome }: { readonly onOutcome: (outcome: BroughtIn) => void }) => {
  const [layout, setLayout] = useState<'service' | 'own'>('service')
  const [own, setOwn] = useState(NEW_LAYOUT)
  const take = async (file: File) => {
    onOutcome('reading')
    const columns = layout === 'own' ? mapOf(own) : null
    onOutcome(await send({ name: file.name.slice(0, 200), text: await file.text(), columns }))
  }
  const lacks = layout === 'own' && MAP_FIELDS.some(([field, , needed]) => needed && !own.names[field])
  return (
    <div class="stack">
      <p class="small quiet">{W.replace}</p>
      <Choice
        label={W.layout}
        value={layout}
        options={[
          { value: 'service', label: W.layouts.service },
          { value: 'own', label: W.layouts.own },
        ]}
        onValue={setLayout}
      />
      {layout === 'own' ? <OwnLayout own={own} onOwn={setOwn} /> : <p class="hint">{W.serviceHint}</p>}
      <FileField
        label={W.file}
        accept=".csv,.txt"
        hint={
          lacks ? 'Say first which columns are the day, the rain, the coldest and the warmest.' : undefined
        }
        disabled={lacks}
        onFile={(file) => void take(file)}
      />
    </div>
  )
}
