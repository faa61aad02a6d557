import { quantityAt } from '@swardwright/engine'
import {
  fromWantedUnit,
  inWantedUnit,
  unitMark,
  wantedDecimals,
  type QuantityKind,
} from '@swardwright/present'
import { units } from '../state/course.ts'
import { NumberField } from './NumberField.tsx'

type Props = {
  /** The schema that the value is checked against, and where in it the value stands: meaning, unit and range come from there. */
  readonly schema: unknown
  readonly path: readonly string[]
  readonly value: number | null
  readonly onValue: (value: number) => void
  readonly onEmpty?: () => void
  /** A shorter name than the schema's meaning. */
  readonly label?: string
  readonly hint?: string
  /** Set where the club may read the quantity in another unit than the stored one. */
  readonly kind?: QuantityKind
}

const UNIT_WORDS: Readonly<Record<string, string>> = {
  '1': '',
  m2: 'm²',
  'kg/m3': 'kg/m³',
  'm/s2': 'm/s²',
  '1/min': 'a min',
  degC: '°C',
}

/** A number field whose meaning, unit and accepted range come from the schema, so that they are written down once. */
export const Measured = (props: Props) => {
  const quantity = quantityAt(
    props.schema,
    props.path.map((key) => (/^\d+$/u.test(key) ? Number(key) : key)),
  )
  if (quantity === undefined) throw new Error(`the schema has no quantity at ${props.path.join('.')}`)
  const { kind, label, value, onValue, ...rest } = props
  const wanted = units.value
  const show = (stored: number) => (kind === undefined ? stored : inWantedUnit(kind, stored, wanted))
  return (
    <NumberField
      label={label ?? quantity.meaning}
      unit={kind === undefined ? (UNIT_WORDS[quantity.unit] ?? quantity.unit) : unitMark(kind, wanted)}
      value={value === null ? null : show(value)}
      min={show(quantity.min)}
      max={show(quantity.max)}
      digits={kind === undefined ? 3 : Math.max(1, wantedDecimals(kind, wanted))}
      onValue={(typed) => onValue(kind === undefined ? typed : fromWantedUnit(kind, typed, wanted))}
      {...(rest.hint === undefined ? {} : { hint: rest.hint })}
      {...(rest.onEmpty === undefined ? {} : { onEmpty: rest.onEmpty })}
    />
  )
}
