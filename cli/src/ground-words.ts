import type { PassSettingsError } from '@swardwright/engine'

const SETTING_OPTIONS: Readonly<Record<PassSettingsError['field'], string>> = {
  widthM: '--width',
  overlapM: '--overlap',
  speedMPerS: '--speed',
  turnS: '--turn',
  turnRadiusM: 'the turning radius',
  turnStyle: 'the turn',
  laps: '--laps',
  order: 'the order',
}

/** One sentence for a setting out of range. */
export const passSettingsErrorSentence = (error: PassSettingsError): string => {
  const unit = error.unit === '1' ? '' : ` ${error.unit}`
  const max = Number(error.max.toFixed(3))
  return `${SETTING_OPTIONS[error.field]} is ${error.received}${unit}; it must be from ${error.min} to ${max}${unit}`
}
