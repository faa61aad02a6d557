import { writeFileSync } from 'node:fs'
import { demoClub } from './demo/club.ts'
import { demoFeatures } from './demo/features.ts'
import { demoForecast } from './demo/forecast.ts'
import { demoPrescription } from './demo/prescription.ts'

/** One feature a line, so that a change of one green is one changed line. */
const courseText = (): string => {
  const features = demoFeatures().map((feature) => `    ${JSON.stringify(feature)}`)
  const club = JSON.stringify(demoClub(), null, 2).replaceAll('\n', '\n  ')
  return `{\n  "type": "FeatureCollection",\n  "swardwright": ${club},\n  "features": [\n${features.join(',\n')}\n  ]\n}\n`
}

/** One column of hours a line. */
const forecastText = (): string => {
  const { hourly, ...head } = demoForecast()
  const columns = Object.entries(hourly).map(([name, values]) => `    "${name}": ${JSON.stringify(values)}`)
  const top = JSON.stringify(head, null, 2).slice(0, -2)
  return `${top},\n  "hourly": {\n${columns.join(',\n')}\n  }\n}\n`
}

/** The three files of the demo by name, as they stand in `examples/`. */
export const demoFiles = (): Readonly<Record<string, string>> => ({
  'demo-course.geojson': courseText(),
  'demo-forecast.json': forecastText(),
  'demo-prescription.json': `${JSON.stringify(demoPrescription(), null, 2)}\n`,
})

if (process.argv[2] === '--write')
  for (const [name, text] of Object.entries(demoFiles()))
    writeFileSync(new URL(`../examples/${name}`, import.meta.url), text)
