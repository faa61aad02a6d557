import type { Effect, MachineKind, TaskKind } from '@swardwright/engine'

/** How one thing is called. */
export type TaskWords = {
  /** The work as a noun, for headings and posts: 'coring'. */
  readonly work: string
  /** What to do, for lists and buttons: 'core'. */
  readonly todo: string
  /** What has been done: 'cored'. */
  readonly done: string
}

/** Trade names of all that a plan can hold. UK trade words; US words differ (see `docs`). */
export const TASK_WORDS: Readonly<Record<TaskKind, TaskWords>> = {
  feed: { work: 'feeding', todo: 'feed', done: 'fed' },
  core: { work: 'coring', todo: 'core', done: 'cored' },
  solidTine: { work: 'solid tining', todo: 'solid tine', done: 'solid tined' },
  scarify: { work: 'scarifying', todo: 'scarify', done: 'scarified' },
  collect: { work: 'collecting', todo: 'collect', done: 'collected' },
  brushIn: { work: 'brushing in', todo: 'brush in', done: 'brushed in' },
  blow: { work: 'blowing clean', todo: 'blow clean', done: 'blown clean' },
  cut: { work: 'cutting', todo: 'cut', done: 'cut' },
  dress: { work: 'dressing', todo: 'dress', done: 'dressed' },
  dragIn: { work: 'dragging in', todo: 'drag in', done: 'dragged in' },
  roll: { work: 'rolling', todo: 'roll', done: 'rolled' },
  seed: { work: 'overseeding', todo: 'overseed', done: 'overseeded' },
  water: { work: 'watering', todo: 'water', done: 'watered' },
  load: { work: 'loading sand', todo: 'load sand', done: 'loaded' },
  move: { work: 'moving', todo: 'move', done: 'moved' },
  setUp: { work: 'setting up', todo: 'set up', done: 'set up' },
}

/** A second or later covering has its own word where the trade has one. */
const LATER_PASS: Partial<Readonly<Record<TaskKind, string>>> = {
  scarify: 'scarify turned',
  cut: 'cut across',
}

/** What to do in one covering, as it is said in a list of steps: 'scarify', 'scarify turned'. */
export const coveringTodo = (operation: TaskKind, pass: number | null): string =>
  (pass === 2 ? LATER_PASS[operation] : undefined) ?? TASK_WORDS[operation].todo

/** What to do, with the covering or the dresser load where there are several: 'scarify turned', 'dress, load 2 of 3'. */
export const taskTodo = (task: {
  readonly operation: TaskKind
  readonly pass?: number | null
  readonly load?: number | null
  readonly loads?: number | undefined
}): string => {
  const { operation, pass, load, loads } = task
  const word = TASK_WORDS[operation].todo
  if (operation === 'dress' && load != null && (loads ?? 2) > 1)
    return loads === undefined ? `${word}, load ${load}` : `${word}, load ${load} of ${loads}`
  if (pass == null || pass < 2) return word
  const turned = coveringTodo(operation, pass)
  return turned === word ? `${word}, pass ${pass}` : turned
}

/** A green's work state, in order. */
export const WORK_STATES = ['ready', 'opened', 'cleared', 'dressed', 'finished'] as const

/** A green's work state. */
export type WorkState = (typeof WORK_STATES)[number]

/** What a state means and what is still needed before the green may be left. */
export const STATE_WORDS: Readonly<
  Record<WorkState, { readonly word: string; readonly means: string; readonly needs: string }>
> = {
  ready: { word: 'ready', means: 'not yet opened', needs: 'nothing; it can wait' },
  opened: {
    word: 'opened',
    means: 'holes or grooves are open, cores or debris lie on it',
    needs: 'clear, dress, drag in',
  },
  cleared: { word: 'cleared', means: 'no cores or debris lie on it', needs: 'dress, drag in' },
  dressed: { word: 'dressed', means: 'the sand is on', needs: 'dry, drag in' },
  finished: { word: 'finished', means: 'sand dragged in, rolled', needs: 'nothing' },
}

/** What golfers may do on a green. */
export const PLAY_WORDS = {
  inPlay: 'in play',
  onTemporary: 'on a temporary',
  shut: 'shut',
  recovering: 'recovering',
  back: 'back',
} as const

/** What a step does to the green. */
export const EFFECT_WORDS: Readonly<Record<Effect, string>> = {
  opens: 'opens the green',
  clears: 'clears it',
  dresses: 'dresses it',
  finishes: 'finishes it',
}

/** What kinds of machine are called, and the letter that stands for each on the board. */
export const MACHINE_WORDS: Readonly<
  Record<MachineKind, { readonly name: string; readonly many: string; readonly letter: string }>
> = {
  corer: { name: 'corer', many: 'corers', letter: 'C' },
  deepTiner: { name: 'deep tiner', many: 'deep tiners', letter: 'T' },
  scarifier: { name: 'scarifier', many: 'scarifiers', letter: 'S' },
  collector: { name: 'core collector', many: 'core collectors', letter: 'K' },
  brush: { name: 'brush', many: 'brushes', letter: 'B' },
  blower: { name: 'blower', many: 'blowers', letter: 'A' },
  mower: { name: 'mower', many: 'mowers', letter: 'M' },
  dresser: { name: 'dresser', many: 'dressers', letter: 'D' },
  dragMat: { name: 'drag mat', many: 'drag mats', letter: 'G' },
  roller: { name: 'roller', many: 'rollers', letter: 'R' },
  seeder: { name: 'seeder', many: 'seeders', letter: 'E' },
  spreader: { name: 'spreader', many: 'spreaders', letter: 'F' },
  sprayer: { name: 'sprayer', many: 'sprayers', letter: 'Y' },
  hose: { name: 'hose', many: 'hoses', letter: 'H' },
}

/** The letter of work done by hand, without a machine. */
export const HAND_LETTER = 'h'

/** Letters for the machines of a shed: the kind's letter, numbered where there are several of a kind ('S1', 'S2'). */
export const machineLetters = (
  machines: readonly { readonly id: string; readonly kind: MachineKind }[],
): ReadonlyMap<string, string> =>
  new Map(
    machines.map(({ id, kind }) => {
      const alike = machines.filter((machine) => machine.kind === kind)
      const { letter } = MACHINE_WORDS[kind]
      return [
        id,
        alike.length === 1 ? letter : `${letter}${alike.findIndex((machine) => machine.id === id) + 1}`,
      ]
    }),
  )
