import { describe, expect, it } from 'vitest'
import type { PlanTask } from '../plan.ts'
import type { Problem, ScheduledTask } from '../problem.ts'
import { checkPlan, checkReplanned } from './check.ts'
import { compileProblem } from './compile.ts'
import type { ToldSpell } from './rules/record.ts'
import { smallProblem } from './small-course.ts'
import { SMALL_UNPLANNED, smallTasks, written } from './small-plan.ts'

/*
 * Plans made in the middle of the work, on the small course. Green a: opened 501, dressed 589, dry 689, dragged 689 to 704. Green b: opened 551, cleared 616, dressed 616 to
 * 626, dry 726, dragged 726 to 741. All figures are worked by hand from `small-course.ts`.
 */

const moved = (changes: Readonly<Record<string, readonly [number, number] | null>>): readonly PlanTask[] =>
  smallTasks().flatMap((task) => {
    const span = changes[task.id]
    if (span === null) return []
    return span === undefined ? [task] : [{ ...task, start: written(span[0]), finish: written(span[1]) }]
  })

const STANDING: readonly ScheduledTask[] = []

const at = (nowMin: number, change: Partial<Problem> = {}): Problem => ({
  ...smallProblem(),
  ...change,
  committed: { nowMin, tasks: STANDING, pins: [] },
})

const judge = (problem: Problem, tasks: readonly PlanTask[], told: readonly ToldSpell[] = []) => {
  const found = checkReplanned(
    compileProblem(problem),
    { tasks: [...tasks], unplanned: SMALL_UNPLANNED },
    told,
  )
  return {
    rules: found.violations.map(({ rule, green, by }) => [rule, green, by]),
    lost: found.lost.map(({ id, state, atMin, reason, byMin }) => [id, state, atMin, reason, byMin]),
  }
}

describe('what was begun before now', () => {
  it('is history: a covering that took less than it should is no fault of the plan', () => {
    const quick = moved({ 'core-a': [501, 521] })
    expect(checkPlan(smallProblem(), { tasks: [...quick], unplanned: SMALL_UNPLANNED })).toMatchObject([
      { rule: 'taskTooShort', green: 'a', by: 10 },
    ])
    expect(judge(at(600), quick)).toEqual({ rules: [], lost: [] })
  })

  it('excuses nothing that is still to come', () => {
    const quick = moved({ 'dress-b1': [616, 622] })
    expect(judge(at(600), quick).rules).toEqual([['taskTooShort', 'b', 4]])
  })

  it('may have taken a break that nobody can give back', () => {
    // Ann cores on until 832; of her window 720 to 840 only 8 minutes are left. Her rolling is dropped to have no other task there.
    const long = moved({ 'core-b': [551, 832] })
    const rules = (nowMin: number) => judge(at(nowMin), long).rules.map(([rule]) => rule)
    expect(rules(600)).not.toContain('breakMissed')
    expect(rules(500)).toContain('breakMissed')
  })
})

describe('a green in work that rain catches', () => {
  it('is lost where everybody and everything at once would be too late', () => {
    // Rain at 700: a is dry at 689 and takes 15, so 704: 4 too late. b is cleared at 616, dressed at 626, dry at 726, done at 741: 41 too late.
    expect(judge(at(600, { rain: [{ start: 700, end: 760 }] }), smallTasks())).toEqual({
      rules: [],
      lost: [
        ['a', 'dressed', 700, 'tooLittleTime', 4],
        ['b', 'dressed', 700, 'tooLittleTime', 41],
      ],
    })
  })

  it('is the fault of a plan that could have had it finished', () => {
    // Rain at 705: a could be done at 704 and is dragged from 700 to 715; b is lost by 36.
    const slow = moved({
      'mat-a': [683, 689],
      'drag-a': [700, 715],
      'mat-b': [715, 718],
      'roll-a': [725, 735],
      'roller-b': [735, 738],
    })
    const found = judge(at(600, { rain: [{ start: 705, end: 760 }] }), slow)
    expect(found.rules).toEqual([['openInRain', 'a', 10]])
    expect(found.lost.map(([id]) => id)).toEqual(['b'])
  })

  it('is the fault of the plan where the record says that the next load was filled while the last was spread', () => {
    // The dresser is at a with its second load at 565, as recorded: spread 565 to 575, dry at 675, dragged by 690. No trip to the bay of 18 minutes comes between. Rain at 692: dragged 680 to 695 it is 3 too late.
    const filled = moved({
      'dresser-bay-2': [550, 552],
      'load-a2': [552, 560],
      'dresser-a2': [560, 565],
      'dress-a2': [566, 576],
      'mat-a': [672, 678],
      'drag-a': [680, 695],
    })
    const found = judge(at(565, { rain: [{ start: 692, end: 760 }] }), filled)
    expect(found.rules.filter(([rule]) => rule === 'openInRain')).toEqual([['openInRain', 'a', 3]])
    expect(found.lost.map(([id]) => id)).toEqual(['b'])
  })

  it('is lost where the tines for its next covering come too late, and its missing steps where they never come', () => {
    // Collecting b takes a set that comes at 650: done at 675, dressed at 685, dry at 785, dragged in at 800: 55 after the rain at 745. Without that wait it were 741.
    const tined = (atMin: number, rain: Problem['rain']) =>
      at(570, {
        rain,
        greens: smallProblem().greens.map((green) => ({
          ...green,
          steps: green.steps.map((step) =>
            green.id === 'b' && step.operation === 'collect'
              ? { ...step, tines: { kind: 0, sets: 1 } }
              : step,
          ),
        })),
        tines: [{ kind: 0, sets: 0.5, deliveries: [{ atMin, sets: 1 }] }],
      })
    const waits = moved({
      'collect-b': [650, 675],
      'dress-b1': [675, 685],
      'drag-b': [785, 800],
      'roll-b': [810, 820],
    })
    const rain = [{ start: 745, end: 760 }]
    const late = judge(tined(650, rain), waits)
    expect(late.lost).toEqual([['b', 'dressed', 745, 'tooLittleTime', 55]])
    expect(late.rules.filter(([rule]) => rule === 'openInRain')).toEqual([])
    const soon = judge(tined(590, rain), waits)
    expect(soon.rules.filter(([rule]) => rule === 'openInRain')).toEqual([['openInRain', 'b', 15]])
    const cored = smallTasks().filter(
      ({ id, green }) => green !== 'b' || /^(corer|core|collector)-b$/u.test(id),
    )
    expect(judge(tined(100_000, []), cored).rules.filter(([rule]) => rule === 'missingOperation')).toEqual([])
    expect(
      judge(tined(590, []), cored).rules.filter(([rule]) => rule === 'missingOperation').length,
    ).toBeGreaterThan(0)
  })

  it('is the fault of a plan that opens it after now', () => {
    const found = judge(at(540, { rain: [{ start: 730, end: 760 }] }), smallTasks())
    expect(found.rules).toEqual([['openInRain', 'b', 11]])
  })

  // No drying and an hour of dragging each, with one mat: from the shed it is at either green at 636. Until 740 there are 104 minutes for 120.
  const greens = smallProblem().greens.map((green) => ({
    ...green,
    steps: green.steps.map((step) =>
      step.operation === 'dragIn'
        ? { ...step, dryNeedMm: 0, minutesByMachine: new Map([['mat', 60]]) }
        : step,
    ),
  }))
  const together = at(630, { greens, rain: [{ start: 740, end: 800 }] })

  it('is lost where each could be saved but not both', () => {
    const first = moved({
      'mat-a': [630, 636],
      'drag-a': [636, 696],
      'mat-b': [696, 699],
      'drag-b': [803, 863],
      'roll-b': [873, 883],
    })
    const found = judge(together, first)
    expect(found.lost).toEqual([['b', 'dressed', 740, 'notAllTogether', 0]])
    expect(found.rules.filter(([rule]) => rule === 'openInRain')).toEqual([])
  })

  it('is a fault where more are caught than must be', () => {
    const none = moved({
      'mat-a': [630, 636],
      'drag-a': [690, 750],
      'mat-b': [750, 753],
      'drag-b': [803, 863],
      'roll-a': [765, 775],
      'roller-b': [775, 778],
      'roll-b': [873, 883],
    })
    expect(judge(together, none).rules.filter(([rule]) => rule === 'openInRain')).toEqual([
      ['openInRain', 'a', 10],
      ['openInRain', 'b', 60],
    ])
  })

  // As above, but half an hour of dragging each with a mat of its own that one person handles, so the machines are in nobody's way. Both mats come from the shed: at either green at 636.
  const oneEach = (backMin: number, rainMin: number): Problem => {
    const small = smallProblem()
    const ownMat = (id: string): string => (id === 'a' ? 'mat' : 'net')
    return at(630, {
      machines: small.machines.flatMap((machine) =>
        machine.id === 'mat' ? ['mat', 'net'].map((id) => ({ ...machine, id, crew: 1 })) : [machine],
      ),
      greens: greens.map((green) => ({
        ...green,
        steps: green.steps.map((step) =>
          step.operation === 'dragIn'
            ? { ...step, minutesByMachine: new Map([[ownMat(green.id), 30]]) }
            : step,
        ),
      })),
      people: small.people.map((person) =>
        person.id === 'cat'
          ? {
              ...person,
              shifts: [
                { start: 480, end: 630 },
                { start: backMin, end: 960 },
              ],
              ordinaryEndMin: [630, 750],
            }
          : person,
      ),
      rain: [{ start: rainMin, end: 800 }],
    })
  }
  const oneAfterTheOther = moved({
    'mat-a': [630, 636],
    'drag-a': [636, 666],
    'mat-b': [696, 702],
    'drag-b': [803, 833],
    'roll-b': [873, 883],
  }).map((task) => (/^(mat|drag)-b$/u.test(task.id) ? { ...task, machine: 'net' } : task))

  it('is lost where there are machines and minutes enough, but not people at the right time', () => {
    // Cat is away from 630 to 665 and at a green at 668. Bob alone drags a from 636 to 666 and b till 696 at the soonest; Cat would be done with b at 698. Yet until 695 Bob has 59 minutes from 636
    // on and Cat 30, together more than the 60 that are needed.
    const found = judge(oneEach(665, 695), oneAfterTheOther)
    expect(found.lost).toEqual([['b', 'dressed', 695, 'notAllTogether', 0]])
    expect(found.rules.filter(([rule]) => rule === 'openInRain')).toEqual([])
  })

  it('is the fault of the plan where somebody is there for each', () => {
    // Cat is back at 640: from the shed with the net she is at b at 646, and done at 676.
    const found = judge(oneEach(640, 695), oneAfterTheOther)
    expect(found.lost).toEqual([])
    expect(found.rules.filter(([rule]) => rule === 'openInRain')).toEqual([['openInRain', 'b', 105]])
  })

  it('is lost by itself where somebody would have to be at two places for it', () => {
    // Only b is in work, at 595. Bob brings the collector by 601; two collect for 25 minutes, Bob and Cat. Cat alone can set the dresser up, 10, with 17 from there to b. Side by side that were 626 for the
    // collecting, 636 for the dressing, 651 for the dragging (15, no drying). But Cat is at the dresser till 605, so it is 630, 640, 655; or at b till 626, so the dresser is there at 653.
    const small = smallProblem()
    const alone = (rainMin: number): Problem =>
      at(595, {
        greens: greens
          .filter(({ id }) => id === 'b')
          .map((green) => ({
            ...green,
            steps: green.steps.map((step) =>
              step.operation === 'dragIn' ? { ...step, minutesByMachine: new Map([['mat', 15]]) } : step,
            ),
          })),
        machines: small.machines.map((machine) =>
          machine.id === 'collector' ? { ...machine, crew: 2 } : machine,
        ),
        people: small.people.map((person) =>
          person.id === 'cat' ? { ...person, skills: new Set([...person.skills, 'collect']) } : person,
        ),
        rain: [{ start: rainMin, end: 760 }],
      })
    const onlyB = moved({
      'set-dresser': [605, 615],
      'dresser-bay-1': [615, 619],
      'dresser-bay-2': null,
      'dresser-bay-3': null,
      'load-b1': [619, 627],
      'dresser-b1': [627, 632],
      'collector-b': [599, 605],
      'collect-b': [605, 630],
      'dress-b1': [640, 650],
    }).filter(({ green }) => green !== 'a')
    expect(judge(alone(654), onlyB).lost).toEqual([['b', 'dressed', 654, 'tooLittleTime', 0]])
    expect(judge(alone(655), onlyB).lost).toEqual([])
    expect(judge(alone(650), onlyB).lost).toEqual([['b', 'dressed', 650, 'tooLittleTime', 1]])
  })

  it('is lost where the sand that it needs comes too late, and the fault of the plan where it does not', () => {
    // At 592 a has taken all 1.5 t. Sand at 720: 8 to load, 5 to b, 10 to spread: 743; dry 843, dragged 858: 58 after the rain at 800.
    const waits = moved({
      'load-b1': [720, 728],
      'dresser-b1': [728, 733],
      'dress-b1': [733, 743],
      'drag-b': [843, 858],
    })
    const withSandAt = (atMin: number) =>
      judge(
        at(592, {
          rain: [{ start: 800, end: 860 }],
          stores: smallProblem().stores.map((store) => ({ ...store, deliveries: [{ atMin, massT: 0.8 }] })),
        }),
        waits,
      )
    expect(withSandAt(720).lost).toEqual([['b', 'dressed', 800, 'sandTooLate', 58]])
    expect(withSandAt(720).rules.map(([rule]) => rule)).not.toContain('openInRain')
    expect(withSandAt(594).lost).toEqual([])
    expect(withSandAt(594).rules.map(([rule]) => rule)).toContain('openInRain')
  })

  it('is lost where nobody can do a step of it any more', () => {
    const machines = smallProblem().machines.map((machine) =>
      machine.id === 'mat' ? { ...machine, available: [{ start: 360, end: 630 }] } : machine,
    )
    const gone = moved({
      'mat-a': null,
      'drag-a': null,
      'mat-b': null,
      'drag-b': null,
      'roller-a': null,
      'roll-a': null,
      'roller-b': null,
      'roll-b': null,
      'water-b': null,
    })
    const found = judge(at(630, { machines }), gone)
    expect(found.rules).toEqual([])
    expect(found.lost.map(([id, state, , reason]) => [id, state, reason])).toEqual([
      ['a', 'dressed', 'cannotBeDone'],
      ['b', 'dressed', 'cannotBeDone'],
    ])
  })
})

describe('what was recorded', () => {
  it('stands as it was recorded', () => {
    const told = [{ green: 0, step: 0, startMin: 501, endMin: 531 }]
    expect(judge(at(600), smallTasks(), told).rules).toEqual([])
  })

  it('[againstRecord] is not told otherwise by the plan', () => {
    const told = [
      { green: 0, step: 0, startMin: 501, endMin: 535 },
      { green: 1, step: 1, startMin: null, endMin: 610 },
    ]
    expect(judge(at(620), smallTasks(), told).rules).toEqual([
      ['againstRecord', 'a', 4],
      ['againstRecord', 'b', 6],
    ])
  })

  it('[againstRecord] is not left out by the plan', () => {
    const told = [{ green: 1, step: 5, startMin: 599, endMin: null }]
    const dry = moved({ 'water-b': null })
    expect(judge(at(600), dry, told).rules).toContainEqual(['againstRecord', 'b', 1])
  })
})
