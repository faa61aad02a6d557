import { coordinate, draw, sheet, type Drawing } from './drawing.ts'
import { patternDefinitions } from './patterns.ts'
import { fittedText, textWidthPx } from './text-fit.ts'
import { dayWords } from './times.ts'
import { paint } from './tokens.ts'
import {
  BAND_KINDS,
  boardPlan,
  HEAD_PX,
  PEOPLE_GAP_PX,
  PERSON_PX,
  type BoardInput,
  type BoardPlan,
} from './board/board-input.ts'
import { caughtOn, tightestOn } from './board/risk.ts'
import { greenRow, personRow, spareLine, STATE_PX } from './board/rows.ts'
import { flagsDrawing, skyDrawing } from './board/sky.ts'

/** The board in two parts of one height: the names stay, the hours scroll. */
export type Board = { readonly names: Drawing; readonly hours: Drawing }

const rules = (plan: BoardPlan, input: BoardInput, widthPx: number): Drawing =>
  draw('path', {
    d: [
      ...input.greens.map((_, n) => HEAD_PX + (n + 1) * plan.rowPx),
      ...input.people.map((_, n) => plan.personPx(n) + PERSON_PX / 2),
    ]
      .map((y) => `M0 ${coordinate(y)}H${coordinate(widthPx)}`)
      .join(''),
    stroke: paint('rule'),
    'stroke-width': 0.7,
    fill: 'none',
  })

/** A green's number as players know it, then its name. */
const greenName = (input: BoardInput, plan: BoardPlan, index: number): Drawing => {
  const green = input.greens[index]
  const y = plan.greenPx(index)
  const number = green?.hole === null || green === undefined ? '' : String(green.hole)
  const left = number === '' ? 0 : 26
  return draw('g', { 'data-part': 'green', 'data-id': green?.id ?? '' }, [
    draw(
      'text',
      { x: 20, y: y + 5, 'font-size': 15, 'font-weight': 650, 'text-anchor': 'end', fill: paint('ink') },
      [number],
    ),
    draw('text', { x: left, y: y + 4, 'font-size': 13, fill: paint('ink') }, [
      fittedText(green?.name ?? '', 13, input.view.namesPx - left - 4),
    ]),
  ])
}

const namesDrawing = (input: BoardInput, plan: BoardPlan): readonly Drawing[] => [
  rules(plan, input, input.view.namesPx),
  ...input.greens.map((_, n) => greenName(input, plan, n)),
  ...(input.people.length === 0
    ? []
    : [
        draw(
          'text',
          { x: 0, y: plan.greensBottomPx + PEOPLE_GAP_PX - 9, 'font-size': 12, fill: paint('quiet') },
          ['people'],
        ),
      ]),
  ...input.people.map((person, n) =>
    draw('text', { x: 0, y: plan.personPx(n) + 4, 'font-size': 13, fill: paint('ink') }, [
      fittedText(person.name, 13, input.view.namesPx - 4),
    ]),
  ),
]

const caughtDrawing = (input: BoardInput, plan: BoardPlan, index: number): readonly Drawing[] => {
  const day = input.days[index]
  if (day === undefined) return []
  return caughtOn(day, input.greens).map((caught) => {
    const [from, to] = [plan.xPx(index, caught.fromMs), plan.xPx(index, caught.toMs)]
    const y = plan.greenPx(caught.green) + 6
    return draw('g', { 'data-part': 'caught', 'data-id': input.greens[caught.green]?.id ?? '' }, [
      draw('path', {
        d: `M${coordinate(from)} ${coordinate(y)}H${coordinate(Math.max(to, from + 3))}`,
        stroke: paint('rust'),
        'stroke-width': STATE_PX.opened + 3,
        fill: 'none',
      }),
      draw('text', { x: from, y: y - 9, 'font-size': 12, 'font-weight': 700, fill: paint('rust') }, [
        'caught',
      ]),
    ])
  })
}

const spareDrawing = (input: BoardInput, plan: BoardPlan, index: number): readonly Drawing[] => {
  const day = input.days[index]
  const tightest = day === undefined ? null : tightestOn(day, input.greens)
  return tightest === null ? [] : [spareLine(tightest, index, plan)]
}

const hoursDrawing = (input: BoardInput, plan: BoardPlan): readonly (Drawing | null)[] => [
  patternDefinitions(input.scope, BAND_KINDS),
  ...input.days.map((day, n) => skyDrawing(day, n, input, plan)),
  rules(plan, input, plan.hoursWidthPx),
  ...input.greens.map((green, n) => greenRow(green, n, input, plan)),
  ...input.days.flatMap((_, n) => [...spareDrawing(input, plan, n), ...caughtDrawing(input, plan, n)]),
  ...input.people.map((person, n) => personRow(person, n, input, plan)),
  ...input.days.flatMap((day, n) => flagsDrawing(day, n, input, plan)),
]

/** The names of greens and people, as high as the hours. */
export const boardNames = (input: BoardInput): Drawing => {
  const plan = boardPlan(input)
  return sheet(
    { widthPx: input.view.namesPx, heightPx: plan.heightPx, label: 'Names of greens and people' },
    namesDrawing(input, plan),
  )
}

/** The hours of the days given, one row a green and a person; a board of one day says which. */
export const boardHours = (input: BoardInput): Drawing => {
  const plan = boardPlan(input)
  const [day] = input.days
  const which = day === undefined || input.days.length > 1 ? '' : `, ${dayWords(day.date)}`
  return sheet(
    {
      widthPx: plan.hoursWidthPx,
      heightPx: plan.heightPx,
      label: `Greens and people by the hour${which}`,
    },
    hoursDrawing(input, plan),
  )
}

/**
 * The plan as greens down and hours across. One line a green whose thickness is what lies open; letters of the machines on it; rain, dew,
 * frost and dark as patterned bands behind; the last safe start as one rule with its time; the tightest finish of each day marked with what
 * it has to spare; a green caught in rain or dark in rust. Parts: `green`, `task`, `state`, `band`, `flag`, `spare`, `caught`, `person`.
 */
export const boardDrawing = (input: BoardInput): Board => ({
  names: boardNames(input),
  hours: boardHours(input),
})

/** Both parts as one drawing, for paper and for files. */
export const boardSheet = (input: BoardInput): Drawing => {
  const plan = boardPlan(input)
  return sheet(
    {
      widthPx: input.view.namesPx + plan.hoursWidthPx,
      heightPx: plan.heightPx,
      label: 'The plan: greens and people by the hour',
    },
    [
      draw('g', {}, namesDrawing(input, plan)),
      draw('g', { transform: `translate(${input.view.namesPx} 0)` }, hoursDrawing(input, plan)),
    ],
  )
}

/** What the thickness of the lines means, as a row of samples with their words. */
export const boardKey = (): Drawing => {
  const states = ['opened', 'cleared', 'dressed', 'finished'] as const
  let x = 0
  const samples = states.map((state) => {
    const left = x
    x += 34 + textWidthPx(state, 13) + 14
    return draw('g', {}, [
      draw('path', {
        d: `M${coordinate(left)} 10h26`,
        stroke: paint(state === 'finished' ? 'leaf' : 'ink'),
        'stroke-width': STATE_PX[state],
        fill: 'none',
      }),
      draw('text', { x: left + 32, y: 14.5, 'font-size': 13, fill: paint('ink') }, [state]),
    ])
  })
  return sheet({ widthPx: x, heightPx: 20, label: 'Thickness of the lines' }, samples)
}
