import type { Plan } from '../plan.ts'
import type { Violation } from '../rules.ts'
import { smallFigures, written } from './small-plan.ts'

type Figures = ReturnType<typeof smallFigures>

/** A figure of the small plan changed by hand, and how far off it then is. */
export type FigureBroken = {
  readonly rule: 'figureWrong'
  readonly title: string
  readonly figures: Figures
  readonly told: Pick<Violation, 'green' | 'at' | 'by'>
}

const broken = (
  title: string,
  change: (figures: Figures) => Partial<Figures>,
  ...[green, at, by]: readonly [string | null, number | null, number]
): FigureBroken => {
  const figures = smallFigures()
  return {
    rule: 'figureWrong',
    title,
    figures: { ...figures, ...change(figures) },
    told: { green, at: at === null ? null : written(at), by },
  }
}

const objective = (change: Partial<Plan['objective']>) => (figures: Figures) => ({
  objective: { ...figures.objective, ...change },
})

const first = <T>(list: readonly T[], change: Partial<T>): T[] =>
  list.map((one, index) => (index === 0 ? { ...one, ...change } : one))

/** One for every figure that a plan states of itself. */
export const FIGURES_BROKEN: readonly FigureBroken[] = [
  broken(
    'an opening 2 minutes early',
    (f) => ({ openings: first(f.openings, { opened: written(499) }) }),
    'a',
    501,
    2,
  ),
  broken(
    'a clearing 3 minutes late',
    (f) => ({ openings: first(f.openings, { cleared: written(554) }) }),
    'a',
    551,
    3,
  ),
  broken('no moment of dressing', (f) => ({ openings: first(f.openings, { dressed: null }) }), 'a', 589, 1),
  broken(
    'a finish 10 minutes early',
    (f) => ({ openings: first(f.openings, { finished: written(694) }) }),
    'a',
    704,
    10,
  ),
  broken('an opening left out', (f) => ({ openings: f.openings.slice(1) }), 'a', null, 1),
  broken(
    'an opening too many',
    (f) => ({
      openings: [
        ...f.openings,
        { green: 'p', opened: written(501), cleared: null, dressed: null, finished: null },
      ],
    }),
    'p',
    null,
    1,
  ),
  broken('no unfinished green', objective({ unfinishedGreens: 0 }), null, null, 1),
  broken('two fixture clashes too many', objective({ fixtureClashes: 3 }), null, null, 2),
  broken('a shut green-day too few', objective({ shutGreenDays: 1 }), null, null, 1),
  broken('a last finish a day early', objective({ finish: written(498) }), null, 1938, 1440),
  broken('no overtime', objective({ overtimeMin: 0 }), null, null, 11),
  broken('travel 5 minutes short', objective({ travelMin: 60 }), null, null, 5),
  broken(
    'a post without coring',
    (f) => ({ posts: first(f.posts, { operations: ['setUp', 'move', 'roll'] }) }),
    null,
    480,
    1,
  ),
  broken(
    'a post with its greens the wrong way round',
    (f) => ({ posts: first(f.posts, { greens: ['b', 'a'] }) }),
    null,
    480,
    1,
  ),
  broken('a post left out', (f) => ({ posts: f.posts.slice(1) }), null, 480, 1),
  broken(
    'a post of somebody who has nothing to do',
    (f) => ({ posts: [...f.posts, { date: '2026-08-12', person: 'ann', operations: [], greens: [] }] }),
    null,
    null,
    1,
  ),
  broken(
    'a day that ends 61 minutes early',
    (f) => ({ days: first(f.days, { finish: written(700) }) }),
    null,
    761,
    61,
  ),
  broken(
    'a last safe start a minute before the last opening',
    (f) => ({ days: first(f.days, { lastSafeStart: written(550) }) }),
    null,
    761,
    1,
  ),
  broken(
    'no last safe start on a day with openings',
    (f) => ({ days: first(f.days, { lastSafeStart: null }) }),
    null,
    761,
    1,
  ),
  broken('a day left out on which there is work', (f) => ({ days: f.days.slice(1) }), null, 761, 1),
  broken(
    'a day beyond the horizon',
    (f) => ({ days: [...f.days, { date: '2026-09-01', lastSafeStart: null, finish: null }] }),
    null,
    null,
    1,
  ),
  broken(
    '0.3 t more sand than the problem has',
    (f) => ({ sand: first(f.sand, { likelyT: 1.8 }) }),
    'a',
    null,
    0.3,
  ),
  broken('a load of sand too many', (f) => ({ sand: first(f.sand, { loads: 3 }) }), 'a', null, 1),
  broken('sand left out', (f) => ({ sand: f.sand.slice(1) }), 'a', null, 1),
  broken('a plan that calls itself infeasible', () => ({ feasible: false }), null, null, 1),
]
