import { describe, expect, it } from 'vitest'
import { readCourse } from '@swardwright/engine'
import { fold, initialState } from '@swardwright/journal'
import { readFile } from 'node:fs/promises'
import { plantDemo } from './demo.ts'
import { memoryStorage } from './storage/memory.ts'
import { NOW_MS } from './testing/entries.ts'

const factsOf = async (storage: ReturnType<typeof memoryStorage>, course: string) =>
  fold(
    initialState,
    (await storage.journal.page(course, 0, 1000)).map((kept) => kept.entry),
  ).facts

describe('the demo', () => {
  it('is made at the first start: a course with forecast and prescription, as the files have them', async () => {
    const storage = memoryStorage()
    expect(await plantDemo(storage, NOW_MS)).toBe(true)
    const [row] = await storage.journal.courses()
    if (row === undefined) throw new Error('no course')
    const facts = await factsOf(storage, row.id)
    const read = readCourse(
      await readFile(new URL('../../examples/demo-course.geojson', import.meta.url), 'utf8'),
    )
    expect(facts.course).toEqual(read.ok ? read.value.course : null)
    expect(facts.course?.name).toBe(row.name)
    expect(facts.course?.greens).toHaveLength(19)
    expect(facts.forecast?.value.forecast.hourly.time.length).toBeGreaterThan(24)
    expect(facts.prescription?.value.groups.length).toBeGreaterThan(0)
    expect(facts.setAside).toEqual([])
  })

  it('is not made again, nor beside a course of somebody', async () => {
    const storage = memoryStorage()
    await plantDemo(storage, NOW_MS)
    expect(await plantDemo(storage, NOW_MS + 1000)).toBe(false)
    const own = memoryStorage()
    await own.journal.addCourse({ id: 'own', name: 'Own' })
    expect(await plantDemo(own, NOW_MS)).toBe(false)
    expect(await own.journal.courses()).toEqual([{ id: 'own', name: 'Own' }])
  })

  it('is finished when the first start was cut short after the course was made', async () => {
    const storage = memoryStorage()
    await plantDemo(storage, NOW_MS)
    const [row] = await storage.journal.courses()
    if (row === undefined) throw new Error('no course')
    const cut = memoryStorage()
    await cut.journal.addCourse(row)
    expect(await plantDemo(cut, NOW_MS)).toBe(true)
    expect((await factsOf(cut, row.id)).course?.greens).toHaveLength(19)
  })
})
