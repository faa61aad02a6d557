import type { BoardPerson, BoardSpan } from './board-input.ts'

type PersonTask = BoardPerson['tasks'][number]

/** A stretch of one person's day at one machine: what people call a post. */
export type PostBlock = BoardSpan & {
  readonly id: string
  readonly letters: string
  /** Greens served, in order, each once. */
  readonly greens: readonly string[]
  readonly words: readonly string[]
}

/** A pause no longer than this does not end a post, ms. */
const PAUSE_MS = 45 * 60_000

/** A person's tasks gathered into posts: neighbours at one machine with no long pause between them. */
export const postBlocks = (tasks: readonly PersonTask[]): readonly PostBlock[] => {
  const blocks: PostBlock[] = []
  for (const task of [...tasks].sort((a, b) => a.fromMs - b.fromMs)) {
    const last = blocks.at(-1)
    const greens = task.green === '' || task.operation === 'move' ? [] : [task.green]
    if (last !== undefined && last.letters === task.letters && task.fromMs - last.toMs <= PAUSE_MS)
      blocks[blocks.length - 1] = {
        ...last,
        toMs: task.toMs,
        greens: [...last.greens, ...greens.filter((green) => !last.greens.includes(green))],
        words: [...last.words, task.words],
      }
    else
      blocks.push({
        id: task.id,
        fromMs: task.fromMs,
        toMs: task.toMs,
        letters: task.letters,
        greens,
        words: [task.words],
      })
  }
  return blocks
}
