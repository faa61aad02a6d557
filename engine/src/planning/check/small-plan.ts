import type { Plan, PlanTask } from '../plan.ts'

/*
 * A plan for `small-course.ts`, made by hand. All times are minutes from midnight; the arithmetic stands beside the tasks.
 * Green a: opened 501, cleared 551, dressed 589, finished 704. Green b: opened 551, cleared 616, dressed 626, finished 741.
 */

type Row = readonly [
  id: string,
  operation: PlanTask['operation'],
  green: string | null,
  load: number | null,
  machine: string | null,
  people: string,
  startMin: number,
  finishMin: number,
]

/** `waterMin` is when the watering of the next day starts: the shift's 480 and 3 minutes to walk. */
const rows = (waterMin: number): readonly Row[] => [
  // Ann cores: shift from 480, set-up 15, 6 to the first green, 30 of work.
  ['set-corer', 'setUp', null, null, 'corer', 'ann', 480, 495],
  ['corer-a', 'move', 'a', null, 'corer', 'ann', 495, 501],
  ['core-a', 'core', 'a', null, 'corer', 'ann', 501, 531],
  ['corer-b', 'move', 'b', null, 'corer', 'ann', 531, 534],
  // The first green's check takes 20: 531 + 20.
  ['core-b', 'core', 'b', null, 'corer', 'ann', 551, 591],
  // Bob collects: 6 from the shed, then 20 and 25.
  ['collector-a', 'move', 'a', null, 'collector', 'bob', 525, 531],
  ['collect-a', 'collect', 'a', null, 'collector', 'bob', 531, 551],
  ['collector-b', 'move', 'b', null, 'collector', 'bob', 551, 554],
  ['collect-b', 'collect', 'b', null, 'collector', 'bob', 591, 616],
  // Cat dresses: set-up 10, 4 to the bay, 8 to load, 5 to a green, 10 to spread.
  ['set-dresser', 'setUp', null, null, 'dresser', 'cat', 480, 490],
  ['dresser-bay-1', 'move', null, null, 'dresser', 'cat', 490, 494],
  ['load-a1', 'load', 'a', 1, 'dresser', 'cat', 494, 502],
  ['dresser-a1', 'move', 'a', null, 'dresser', 'cat', 502, 507],
  ['dress-a1', 'dress', 'a', 1, 'dresser', 'cat', 551, 561],
  ['dresser-bay-2', 'move', null, null, 'dresser', 'cat', 561, 566],
  ['load-a2', 'load', 'a', 2, 'dresser', 'cat', 566, 574],
  ['dresser-a2', 'move', 'a', null, 'dresser', 'cat', 574, 579],
  ['dress-a2', 'dress', 'a', 2, 'dresser', 'cat', 579, 589],
  ['dresser-bay-3', 'move', null, null, 'dresser', 'cat', 589, 594],
  ['load-b1', 'load', 'b', 1, 'dresser', 'cat', 594, 602],
  ['dresser-b1', 'move', 'b', null, 'dresser', 'cat', 602, 607],
  ['dress-b1', 'dress', 'b', 1, 'dresser', 'cat', 616, 626],
  // Two drag in: dry 100 minutes after dressing, 589 + 100 and 626 + 100. Bob drives the mat, Cat walks.
  ['mat-a', 'move', 'a', null, 'mat', 'bob', 683, 689],
  ['drag-a', 'dragIn', 'a', null, 'mat', 'bob cat', 689, 704],
  ['mat-b', 'move', 'b', null, 'mat', 'bob', 704, 707],
  ['drag-b', 'dragIn', 'b', null, 'mat', 'bob cat', 726, 741],
  // Ann rolls, 10 after dragging: 704 + 10 and 741 + 10.
  ['roller-a', 'move', 'a', null, 'roller', 'ann', 700, 706],
  ['roll-a', 'roll', 'a', null, 'roller', 'ann', 714, 724],
  ['roller-b', 'move', 'b', null, 'roller', 'ann', 724, 727],
  ['roll-b', 'roll', 'b', null, 'roller', 'ann', 751, 761],
  ['water-b', 'water', 'b', null, null, 'cat', waterMin, waterMin + 15],
]

const PASSLESS: ReadonlySet<string> = new Set(['setUp', 'move', 'load'])

/** An instant so many minutes after the origin, written with any offset. The one of London in August is 60. */
export const written = (minute: number, offsetMin = 60, originMs = Date.UTC(2026, 7, 9, 23)): string => {
  const wall = new Date(originMs + (minute + offsetMin) * 60_000).toISOString().slice(0, 19)
  const size = Math.abs(offsetMin)
  const clock = [Math.floor(size / 60), size % 60].map((part) => String(part).padStart(2, '0')).join(':')
  return `${wall}${offsetMin < 0 ? '-' : '+'}${clock}`
}

/** The tasks alone, as somebody would write them by hand. */
export const smallTasks = (
  waterMin = 1440 + 483,
  write: (minute: number) => string = written,
): readonly PlanTask[] =>
  rows(waterMin).map(([id, operation, green, load, machine, people, startMin, finishMin]) => ({
    id,
    operation,
    green,
    pass: PASSLESS.has(operation) ? null : 1,
    load,
    machine,
    people: people.split(' '),
    start: write(startMin),
    finish: write(finishMin),
  }))

/** The green that is left out. */
export const SMALL_UNPLANNED: Plan['unplanned'] = [{ green: 'p', reason: 'notPrescribed', facts: {} }]

/** All that the plan says of itself, counted by hand. */
export const smallFigures = (): Pick<
  Plan,
  'openings' | 'objective' | 'posts' | 'days' | 'sand' | 'feasible'
> => ({
  feasible: true,
  openings: [
    {
      green: 'a',
      opened: written(501),
      cleared: written(551),
      dressed: written(589),
      finished: written(704),
    },
    {
      green: 'b',
      opened: written(551),
      cleared: written(616),
      dressed: written(626),
      finished: written(741),
    },
  ],
  objective: {
    // Green p.
    unfinishedGreens: 1,
    // The fixture 700 to 800 names a, which is in work until 704.
    fixtureClashes: 1,
    // a and b on the first date.
    shutGreenDays: 2,
    finish: written(1938),
    // After 750 only Ann works, until 761.
    overtimeMin: 11,
    // Corer 6 + 3, collector 6 + 3, dresser 4 + 5 x 5, mat 6 + 3, roller 6 + 3.
    travelMin: 65,
  },
  posts: [
    { date: '2026-08-10', person: 'ann', operations: ['setUp', 'move', 'core', 'roll'], greens: ['a', 'b'] },
    { date: '2026-08-10', person: 'bob', operations: ['move', 'collect', 'dragIn'], greens: ['a', 'b'] },
    {
      date: '2026-08-10',
      person: 'cat',
      operations: ['setUp', 'move', 'load', 'dress', 'dragIn'],
      greens: ['a', 'b'],
    },
    { date: '2026-08-11', person: 'cat', operations: ['water'], greens: ['b'] },
  ],
  days: [
    { date: '2026-08-10', lastSafeStart: written(551), finish: written(761) },
    { date: '2026-08-11', lastSafeStart: null, finish: written(1938) },
    { date: '2026-08-12', lastSafeStart: null, finish: null },
  ],
  sand: [
    { green: 'a', lowT: 1.1, likelyT: 1.5, highT: 1.8, loads: 2 },
    { green: 'b', lowT: 0.6, likelyT: 0.8, highT: 1, loads: 1 },
  ],
})
