import * as v from 'valibot'
import type { Sql } from './sql.ts'
import type { WeatherStore } from './storage.ts'

const textRow = v.object({ text: v.string() })

/** Weather in a database that has its tables. */
export const sqlWeather = (sql: Sql): WeatherStore => ({
  read: async (course, name) => {
    const [row] = await sql.rows('SELECT text FROM weather WHERE course = ? AND name = ?', course, name)
    return row === undefined ? null : v.parse(textRow, row).text
  },
  write: async (course, name, text) => {
    await sql.run(
      'INSERT INTO weather (course, name, text) VALUES (?, ?, ?) ON CONFLICT (course, name) DO UPDATE SET text = excluded.text',
      course,
      name,
      text,
    )
  },
})
