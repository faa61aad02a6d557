import { describe, expect, it } from 'vitest'
import { MACHINE_TASKS, OPERATIONS } from '@swardwright/engine'
import { coveringTodo, MACHINE_WORDS, machineLetters, taskTodo, TASK_WORDS } from './operation-words.ts'

describe('words of the work', () => {
  it('exist for each step a chain may name, each its own', () => {
    const words = [...OPERATIONS, ...MACHINE_TASKS].map((kind) => TASK_WORDS[kind].todo)
    expect(new Set(words).size).toBe(OPERATIONS.length + MACHINE_TASKS.length)
  })

  it('never call the work closed, nor draw both ways of brushing together', () => {
    const all = Object.values(TASK_WORDS).flatMap((words) => Object.values(words))
    expect(all.filter((word) => /clos/u.test(word))).toEqual([])
    expect(TASK_WORDS.dragIn.todo).not.toBe(TASK_WORDS.brushIn.todo)
  })

  it('tell a second covering and a dresser load', () => {
    expect(taskTodo({ operation: 'scarify', pass: 1 })).toBe('scarify')
    expect(taskTodo({ operation: 'scarify', pass: 2 })).toBe('scarify turned')
    expect(taskTodo({ operation: 'cut', pass: 2 })).toBe('cut across')
    expect(taskTodo({ operation: 'core', pass: 2 })).toBe('core, pass 2')
    expect(taskTodo({ operation: 'dress', pass: 1, load: 2, loads: 3 })).toBe('dress, load 2 of 3')
    expect(taskTodo({ operation: 'dress', pass: 1, load: 1, loads: 1 })).toBe('dress')
    expect(taskTodo({ operation: 'dress', pass: 1, load: 2 })).toBe('dress, load 2')
  })

  it('call a covering by one word in a list of steps, where commas part the steps', () => {
    expect(coveringTodo('scarify', 1)).toBe('scarify')
    expect(coveringTodo('scarify', 2)).toBe('scarify turned')
    expect(coveringTodo('dragIn', 2)).toBe('drag in')
    expect(coveringTodo('load', null)).toBe('load sand')
  })
})

describe('letters on the board', () => {
  it('are different for each kind of machine', () => {
    const letters = Object.values(MACHINE_WORDS).map(({ letter }) => letter)
    expect(new Set(letters).size).toBe(letters.length)
  })

  it('count machines of one kind', () => {
    const letters = machineLetters([
      { id: 'a', kind: 'scarifier' },
      { id: 'b', kind: 'corer' },
      { id: 'c', kind: 'scarifier' },
    ])
    expect([...letters]).toEqual([
      ['a', 'S1'],
      ['b', 'C'],
      ['c', 'S2'],
    ])
  })
})
