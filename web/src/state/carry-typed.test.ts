// @vitest-environment happy-dom
import { beforeEach, expect, it } from 'vitest'
import { putBack, typedOn } from './carry-typed.ts'

const FORM = `<main>
  <label for="a">Depth</label><input id="a" type="text" />
  <label for="b">Depth</label><input id="b" type="text" />
  <label for="c">Note</label><textarea id="c"></textarea>
  <label for="d">Password</label><input id="d" type="password" />
  <label><input id="e" type="checkbox" value="yes" /> Ready</label>
</main>`

const field = (id: string) => document.getElementById(id) as HTMLInputElement

beforeEach(() => {
  document.body.innerHTML = FORM
})

it('carries what is typed by the names of its fields, those with one name by their order', () => {
  field('b').value = '75'
  field('c').value = 'wet hollow'
  const typed = typedOn(document)
  document.body.innerHTML = FORM
  expect(putBack(document, typed)).toEqual([])
  expect(['a', 'b', 'c'].map((id) => field(id).value)).toEqual(['', '75', 'wet hollow'])
})

it('tells the page as typing would', () => {
  const heard: string[] = []
  document.body.addEventListener('input', (event) => heard.push((event.target as HTMLInputElement).id))
  putBack(document, [{ label: 'Note', nth: 0, value: 'late' }])
  expect(heard).toEqual(['c'])
})

it('never lays down a password, and leaves boxes to tick alone', () => {
  field('d').value = 'wet hollow front left'
  field('e').checked = true
  expect(typedOn(document)).toEqual([])
})

it('keeps for later what has no field yet', () => {
  const typed = [{ label: 'Bay', nth: 0, value: 'North' }]
  expect(putBack(document, typed)).toEqual(typed)
})
