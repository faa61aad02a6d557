import type { Plan, PlanTask } from '../plan.ts'
import type { Problem, ProblemGreen, ProblemStep } from '../problem.ts'
import type { Rule } from '../rules.ts'
import { smallProblem } from './small-course.ts'
import { SMALL_UNPLANNED, smallTasks, written } from './small-plan.ts'

/** What one broken rule must be told as: green, minute from the origin, figure, tasks. */
export type Told = readonly [green: string | null, atMin: number | null, by: number, tasks: readonly string[]]

/** A plan or a problem broken by hand in one place, and all that the checker must say of it. */
export type Broken = {
  readonly rule: Rule
  readonly title: string
  readonly problem: Problem
  readonly tasks: readonly PlanTask[]
  readonly unplanned: Plan['unplanned']
  readonly pins?: NonNullable<Plan['pins']>
  readonly told: readonly Told[]
}

type Change = Partial<Omit<PlanTask, 'start' | 'finish'>> & { readonly span?: readonly [number, number] }

const changed = (task: PlanTask, { span, ...rest }: Change): PlanTask => ({
  ...task,
  ...rest,
  ...(span === undefined ? {} : { start: written(span[0]), finish: written(span[1]) }),
})

/** The small plan with some tasks changed by id. */
const withChanges = (changes: Readonly<Record<string, Change>>): readonly PlanTask[] =>
  smallTasks().map((task) => changed(task, changes[task.id] ?? {}))

const without = (id: string, tasks: readonly PlanTask[] = smallTasks()): readonly PlanTask[] =>
  tasks.filter((task) => task.id !== id)

/** One more task, like one that is there. */
const withCopy = (of: string, id: string, change: Change): readonly PlanTask[] => [
  ...smallTasks(),
  ...smallTasks()
    .filter((task) => task.id === of)
    .map((task) => changed({ ...task, id }, change)),
]

const base = smallProblem()

const settings = (change: Partial<Problem['settings']>): Problem => ({
  ...base,
  settings: { ...base.settings, ...change },
})

const machine = (id: string, change: Partial<Problem['machines'][number]>): Problem => ({
  ...base,
  machines: base.machines.map((one) => (one.id === id ? { ...one, ...change } : one)),
})

const person = (id: string, change: Partial<Problem['people'][number]>): Problem => ({
  ...base,
  people: base.people.map((one) => (one.id === id ? { ...one, ...change } : one)),
})

const green = (id: string, change: Partial<ProblemGreen>): ProblemGreen[] =>
  base.greens.map((one) => (one.id === id ? { ...one, ...change } : one))

const stepsOf = (id: string, change: (step: ProblemStep) => ProblemStep): Problem => ({
  ...base,
  greens: base.greens.map((one) => (one.id === id ? { ...one, steps: one.steps.map(change) } : one)),
})

const firstDay = (change: Partial<Problem['days'][number]>): Problem => ({
  ...base,
  days: base.days.map((day, index) => (index === 0 ? { ...day, ...change } : day)),
})

const noDark: Problem = {
  ...base,
  rain: [],
  days: base.days.map((day) => ({ ...day, sunriseMin: day.startMin, darkMin: day.endMin })),
}

/** Green b dragged in, rolled and watered a day later: machines start at the shed again, 6 minutes away. */
export const standsANight = withChanges({
  'mat-b': { span: [1920, 1926] },
  'drag-b': { span: [1926, 1941] },
  'roller-b': { span: [1920, 1926] },
  'roll-b': { span: [1951, 1961] },
  'water-b': { span: [2880 + 483, 2880 + 498] },
})

/** The corer goes on from b to p (3 minutes) and cores it. */
const coresP: readonly PlanTask[] = [
  ...withCopy('corer-b', 'corer-p', { green: 'p', span: [591, 594] }),
  ...smallTasks()
    .filter(({ id }) => id === 'core-b')
    .map((task) => changed({ ...task, id: 'core-p' }, { green: 'p', span: [594, 624] })),
]

const broken = (
  rule: Rule,
  title: string,
  parts: Partial<Omit<Broken, 'rule' | 'title' | 'told'>>,
  ...told: readonly Told[]
): Broken => ({
  rule,
  title,
  problem: base,
  tasks: smallTasks(),
  unplanned: SMALL_UNPLANNED,
  told,
  ...parts,
})

const ROLL_B_ENDS = 761

/** At least one for every rule. Minutes and figures are worked by hand from the two small files. */
export const BROKEN: readonly Broken[] = [
  broken(
    'unknownId',
    'a machine that the course does not have',
    { tasks: withChanges({ 'core-a': { machine: 'ghost' } }) },
    ['a', 501, 1, ['core-a']],
  ),
  broken(
    'unknownId',
    'two people whom nobody knows',
    { tasks: withChanges({ 'water-b': { people: ['zed', 'zoe'] } }) },
    ['b', 1923, 2, ['water-b']],
  ),
  broken(
    'unknownId',
    'an unplanned green that the course does not have',
    { unplanned: [...SMALL_UNPLANNED, { green: 'z', reason: 'noTimeLeft', facts: {} }] },
    ['z', null, 1, []],
  ),
  broken(
    'badTime',
    'a second set-up that ends 10 minutes before it starts',
    { tasks: withCopy('set-corer', 'again', { span: [480, 470] }) },
    [null, 480, 10, ['again']],
  ),
  broken(
    'badTime',
    'a second set-up on 30 February',
    {
      tasks: [
        ...smallTasks(),
        ...smallTasks()
          .slice(0, 1)
          .map((task) => ({ ...task, id: 'again', start: '2026-02-30T08:00:00+00:00' })),
      ],
    },
    [null, null, 1, ['again']],
  ),
  broken(
    'badTime',
    'a horizon that ends 8 minutes before the last task',
    { problem: { ...base, horizonMin: 1930 } },
    ['b', 1923, 8, ['water-b']],
  ),
  broken(
    'machineTwice',
    'somebody else driving the corer on the spot for 5 minutes while it cores',
    {
      problem: person('bob', { skills: new Set(['collect', 'dragIn', 'core']) }),
      tasks: withCopy('corer-b', 'again', { people: ['bob'], span: [560, 565] }),
    },
    ['b', 560, 5, ['core-b', 'again']],
  ),
  broken(
    'personTwice',
    'Ann riding on the collector for its 3 minutes while she begins to core',
    {
      problem: person('ann', { skills: new Set(['core', 'roll', 'collect']) }),
      tasks: withChanges({ 'collector-b': { people: ['bob', 'ann'] } }),
    },
    ['b', 551, 3, ['collector-b', 'core-b']],
  ),
  broken(
    'wrongMachine',
    'a green that only another roller may roll',
    {
      problem: stepsOf('b', (step) =>
        step.operation === 'roll' ? { ...step, minutesByMachine: new Map([['other', 10]]) } : step,
      ),
    },
    ['b', 751, 1, ['roll-b']],
  ),
  broken(
    'wrongMachine',
    'a move of no machine',
    { tasks: withCopy('collector-b', 'walk', { machine: null, people: ['bob'], span: [560, 563] }) },
    // Without a machine there is no skill to ask for.
    ['b', 560, 1, ['walk']],
  ),
  broken(
    'machineOut',
    'a roller that is out from 6 minutes before the end of its last task',
    { problem: machine('roller', { available: [{ start: 360, end: ROLL_B_ENDS - 6 }] }) },
    ['b', 755, 6, ['roll-b']],
  ),
  broken(
    'noSkill',
    'watering by Ann, who cores and rolls',
    { tasks: withChanges({ 'water-b': { people: ['ann'] } }) },
    ['b', 1923, 1, ['water-b']],
  ),
  broken(
    'noSkill',
    'the mat driven by Ann, who never drags',
    { tasks: withChanges({ 'mat-a': { people: ['ann'] } }) },
    ['a', 683, 1, ['mat-a']],
  ),
  broken(
    'crewShort',
    'one person on a mat that takes two, who is named twice',
    { tasks: withChanges({ 'drag-b': { people: ['bob', 'bob'] } }) },
    ['b', 726, 1, ['drag-b']],
  ),
  broken('crewShort', 'a move that nobody drives', { tasks: withChanges({ 'roller-a': { people: [] } }) }, [
    'a',
    700,
    1,
    ['roller-a'],
  ]),
  broken('missingOperation', 'no rolling of a', { tasks: without('roll-a') }, ['a', null, 1, []]),
  broken(
    'extraOperation',
    'watering twice',
    { tasks: withCopy('water-b', 'again', { span: [1950, 1965] }) },
    ['b', 1950, 1, ['again']],
  ),
  broken(
    'extraOperation',
    'watering of nothing',
    { tasks: withCopy('water-b', 'again', { green: null, span: [1950, 1965] }) },
    [null, 1950, 1, ['again']],
  ),
  broken('extraOperation', 'coring of a green that has no prescription', { tasks: coresP, unplanned: [] }, [
    'p',
    594,
    1,
    ['core-p'],
  ]),
  broken(
    'outOfOrder',
    'collecting 11 minutes before the cores are all out',
    { tasks: withChanges({ 'collect-b': { span: [580, 605] } }) },
    ['b', 580, 11, ['core-b', 'collect-b']],
  ),
  broken(
    'taskTooShort',
    'rolling a minute too short',
    { tasks: withChanges({ 'roll-b': { span: [751, 760] } }) },
    ['b', 751, 1, ['roll-b']],
  ),
  broken(
    'taskTooShort',
    'a set-up 2, a move 1 and a load 3 minutes too short',
    {
      tasks: withChanges({
        'set-dresser': { span: [480, 488] },
        'corer-b': { span: [531, 533] },
        'load-b1': { span: [594, 599] },
      }),
    },
    [null, 480, 2, ['set-dresser']],
    ['b', 531, 1, ['corer-b']],
    ['b', 594, 3, ['load-b1']],
  ),
  broken(
    'lagTooShort',
    'rolling 9 instead of 10 minutes after dragging',
    { tasks: withChanges({ 'roll-b': { span: [750, 760] } }) },
    ['b', 750, 1, ['drag-b', 'roll-b']],
  ),
  broken(
    'lagTooShort',
    'watering on the same day, 640 minutes before midnight',
    { tasks: withChanges({ 'water-b': { span: [800, 815] } }) },
    ['b', 800, 640, ['roll-b', 'water-b']],
  ),
  broken(
    'sameDay',
    'a green finished 501 minutes into the next day where it never gets dark',
    { problem: noDark, tasks: standsANight },
    ['b', 1440, 501, ['core-b', 'drag-b']],
  ),
  broken('noSetUp', 'a corer that nobody got ready', { tasks: without('set-corer') }, [
    'a',
    495,
    15,
    ['corer-a'],
  ]),
  broken('noMove', 'a corer that is still on the other green', { tasks: without('corer-b') }, [
    'b',
    551,
    3,
    ['core-b'],
  ]),
  broken(
    'noTravel',
    'starting 2 minutes after the shift on a green 3 minutes away',
    { tasks: withChanges({ 'water-b': { span: [1922, 1937] } }) },
    ['b', 1922, 1, ['water-b']],
  ),
  broken(
    'noTravel',
    'fetching a machine 2 minutes after leaving another one 3 minutes away',
    // Bob drives the dresser in Cat's place. Cat walks from the shed at 490 to the bay by 492.
    {
      problem: person('bob', { skills: new Set(['collect', 'dragIn', 'dress']) }),
      tasks: withChanges({
        'set-dresser': { span: [480, 490] },
        'dresser-bay-1': { people: ['bob'], span: [490, 494] },
        'load-a1': { people: ['cat'], span: [494, 502] },
        'dresser-a1': { people: ['bob'], span: [502, 507] },
        'dress-a1': { people: ['cat'], span: [551, 561] },
        // Bob is at a from 507 and would drive off at the shed at 509.
        'collector-a': { span: [509, 515] },
      }),
    },
    ['a', 509, 1, ['dresser-a1', 'collector-a']],
  ),
  broken(
    'tinesGone',
    'a coring for which a fifth of a set is missing',
    // Six tenths of a set for each green: 1.2 by 551, where only one set lies in the shed.
    {
      problem: {
        ...base,
        greens: base.greens.map((green) => ({
          ...green,
          steps: green.steps.map((one) =>
            one.operation === 'core' ? { ...one, tines: { kind: 0, sets: 0.6 } } : one,
          ),
        })),
        tines: [{ kind: 0, sets: 1, deliveries: [{ atMin: 552, sets: 1 }] }],
      },
    },
    ['b', 551, 0.2, ['core-b']],
  ),
  broken(
    'noRefill',
    'a hopper with a load of 0.6 t for a green that takes 0.8 t',
    { tasks: withChanges({ 'load-b1': { green: 'a', load: 2 } }) },
    ['b', 616, 0.2, ['dress-b1']],
  ),
  broken(
    'noRefill',
    'no load at all, by way of the shed',
    {
      tasks: without(
        'load-b1',
        withChanges({ 'dresser-bay-3': { span: [589, 595] }, 'dresser-b1': { span: [595, 601] } }),
      ),
    },
    ['b', 616, 0.8, ['dress-b1']],
  ),
  broken(
    'hopperOverfull',
    'a hopper of 0.85 t for a load of 0.9 t',
    { problem: machine('dresser', { hopperT: 0.85 }) },
    ['a', 494, 0.05, ['load-a1']],
  ),
  broken(
    'hopperOverfull',
    'a load for b on top of one for a',
    {
      problem: {
        ...base,
        stores: [{ kind: 'damp', place: 1, stockT: 9, deliveries: [] }],
      },
      tasks: withCopy('load-a1', 'again', { green: 'b', load: 1, span: [502, 510] }).map((task) =>
        task.id === 'dresser-a1' ? changed(task, { span: [510, 515] }) : task,
      ),
    },
    // 0.9 and 0.8 in a hopper of 0.9.
    ['b', 502, 0.8, ['again']],
  ),
  broken(
    'stockGone',
    'a delivery a minute after the load that needs it',
    {
      problem: {
        ...base,
        stores: [{ kind: 'damp', place: 1, stockT: 1.5, deliveries: [{ atMin: 595, massT: 0.8 }] }],
      },
    },
    ['b', 594, 0.8, ['load-b1']],
  ),
  broken(
    'stockGone',
    'a bay with sand of the other kind only',
    {
      problem: {
        ...base,
        stores: [
          { kind: 'damp', place: 1, stockT: 1.5, deliveries: [] },
          { kind: 'kilnDried', place: 1, stockT: 9, deliveries: [] },
        ],
      },
    },
    ['b', 594, 0.8, ['load-b1']],
  ),
  broken(
    'outsideShift',
    'a shift that ends 6 minutes before the last task',
    { problem: person('ann', { shifts: [{ start: 480, end: 755 }], ordinaryEndMin: [755] }) },
    ['b', 755, 6, ['roll-b']],
  ),
  broken(
    'breakMissed',
    'rolling until 820, which leaves 727 to 751 and 820 to 840',
    { tasks: withChanges({ 'roll-b': { span: [751, 820] } }) },
    ['a', 720, 6, ['roll-a', 'roller-b', 'roll-b']],
  ),
  broken(
    'notWorkable',
    'collecting that runs 6 minutes past its hours',
    { problem: { ...base, workable: new Map([...base.workable, ['collect', [{ start: 335, end: 610 }]]]) } },
    ['b', 610, 6, ['collect-b']],
  ),
  broken(
    'openInRain',
    'rain from 700: a finishes at 704, b at 741',
    { problem: { ...base, rain: [{ start: 700, end: 760 }] } },
    ['a', 700, 4, ['core-a', 'drag-a']],
    ['b', 700, 41, ['core-b', 'drag-b']],
  ),
  broken(
    'openInRain',
    'a green allowed to stand the night, with two hours of rain in it',
    {
      problem: {
        ...settings({ mayStandDryNight: true }),
        rain: [
          { start: 1320, end: 1380 },
          { start: 1500, end: 1560 },
        ],
      },
      tasks: standsANight,
    },
    ['b', 1320, 120, ['core-b', 'drag-b']],
  ),
  broken(
    'openOvernight',
    'dark at 720: a has been finished, b takes until 741',
    { problem: firstDay({ darkMin: 720 }) },
    ['b', 720, 21, ['core-b', 'drag-b']],
  ),
  broken(
    'openOvernight',
    'dark 6 minutes before b is cleared, where a cleared green may stand',
    { problem: { ...firstDay({ darkMin: 610 }), settings: { ...base.settings, mayStandDryNight: true } } },
    ['b', 610, 6, ['core-b', 'drag-b']],
  ),
  broken(
    'draggedBeforeDry',
    'dragging 99 minutes after dressing where it takes 100 to dry',
    { tasks: withChanges({ 'mat-a': { span: [682, 688] }, 'drag-a': { span: [688, 703] } }) },
    ['a', 688, 1, ['dress-a2', 'drag-a']],
  ),
  broken(
    'tooManyOpen',
    'two greens in work where one is allowed',
    { problem: settings({ openGreensCap: 1 }) },
    ['b', 551, 1, ['core-b', 'drag-b']],
  ),
  broken(
    'firstGreenUnchecked',
    'the second green opened a minute before the check is over',
    { tasks: withChanges({ 'core-b': { span: [550, 590] } }) },
    ['b', 550, 1, ['core-a', 'core-b']],
  ),
  broken(
    'firstGreenUnchecked',
    'a weak green first, 50 minutes before one that is not',
    {
      problem: {
        ...base,
        greens: [...green('a', { weak: true }).slice(0, 1), ...green('b', { weak: false }).slice(1)],
      },
    },
    ['a', 501, 50, ['core-a', 'core-b']],
  ),
  broken(
    'servicesNotLocated',
    'a green left out for its services and planned all the same',
    {
      problem: {
        ...base,
        excluded: [...base.excluded, { green: 'a', reason: 'servicesNotLocated', facts: {} }],
      },
    },
    ['a', 501, 1, ['core-a']],
  ),
  broken(
    'servicesNotLocated',
    'such a green that the problem has no steps for',
    {
      problem: { ...base, excluded: [{ green: 'p', reason: 'servicesNotLocated', facts: {} }] },
      tasks: coresP,
      unplanned: [],
    },
    ['p', 594, 1, ['core-p']],
  ),
  broken('notAccountedFor', 'a green that is nowhere', { unplanned: [] }, ['p', null, 1, []]),
  broken(
    'notAccountedFor',
    'a green that is planned and listed as unplanned',
    { unplanned: [...SMALL_UNPLANNED, { green: 'b', reason: 'noTimeLeft', facts: {} }] },
    ['b', null, 1, ['core-b', 'collect-b', 'dress-b1', 'drag-b', 'roll-b', 'water-b']],
  ),
  broken(
    'pinMoved',
    'a green that is pinned to another minute',
    { pins: [{ green: 'b', date: '2026-08-10', opens: written(560) }] },
    ['b', 551, 9, ['core-b']],
  ),
  broken(
    'pinMoved',
    'a green that is pinned to the next day',
    { pins: [{ green: 'b', date: '2026-08-11', opens: null }] },
    ['b', 551, 1440 - 551, ['core-b']],
  ),
]
