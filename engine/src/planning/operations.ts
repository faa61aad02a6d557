/** The steps of a renovation that a chain may name. Closed; the ids stand in files and plans. */
export const OPERATIONS = [
  'feed',
  'core',
  'solidTine',
  'scarify',
  'collect',
  'brushIn',
  'blow',
  'cut',
  'dress',
  'dragIn',
  'roll',
  'seed',
  'water',
] as const

/** One step of a renovation. */
export type Operation = (typeof OPERATIONS)[number]

/** What a plan lists besides operations: filling a dresser, driving a machine to its next place, getting it ready in the morning. */
export const MACHINE_TASKS = ['load', 'move', 'setUp'] as const

/** A task that serves a machine rather than a green. */
export type MachineTask = (typeof MACHINE_TASKS)[number]

/** Anything a plan's task can be. */
export type TaskKind = Operation | MachineTask

/** Whether a task is work on a green rather than for a machine. */
export const isOperation = (kind: TaskKind): kind is Operation =>
  !(MACHINE_TASKS as readonly TaskKind[]).includes(kind)

/** What finishing a step does to a green's work state: ready -> opened -> cleared -> dressed -> finished. `opens` holds from the step's start. */
export const EFFECTS = ['opens', 'clears', 'dresses', 'finishes'] as const

/** A change of a green's work state. */
export type Effect = (typeof EFFECTS)[number]

/** Kinds of machine, and what each can do. Closed; the ids stand in course files. */
export const OPERATIONS_BY_MACHINE_KIND = {
  corer: ['core', 'solidTine'],
  deepTiner: ['solidTine'],
  scarifier: ['scarify'],
  collector: ['collect'],
  brush: ['brushIn', 'dragIn'],
  blower: ['blow'],
  mower: ['cut'],
  dresser: ['dress'],
  dragMat: ['dragIn'],
  roller: ['roll'],
  seeder: ['seed'],
  spreader: ['feed'],
  sprayer: ['feed', 'water'],
  hose: ['water'],
} as const satisfies Record<string, readonly Operation[]>

/** A kind of machine. */
export type MachineKind = keyof typeof OPERATIONS_BY_MACHINE_KIND

/** All kinds of machine, in the table's order. */
export const MACHINE_KINDS = Object.keys(OPERATIONS_BY_MACHINE_KIND) as readonly MachineKind[]
