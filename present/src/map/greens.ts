import { coordinate, draw, part, type Drawing, type DrawingChild } from '../drawing.ts'
import { PLAY_WORDS, STATE_WORDS, type WorkState } from '../operation-words.ts'
import { patternFill } from '../patterns.ts'
import { paint } from '../tokens.ts'
import type { CourseMapInput, MapGreen, MapPlan } from './map-input.ts'
import { polygonPath } from './land.ts'

/** Radius of what a finger may touch round a green, px. */
const TOUCH_PX = 22
/** Radius of the ring round the chosen green, px. */
export const RING_PX = 18
/** Radius of the number in the walk. */
export const STEP_RADIUS_PX = 10

type Look = { readonly fill: string; readonly pattern: 'shut' | 'grit' | null; readonly line: string }

/** How a green looks in each state: colour and pattern, so that either alone tells. */
const LOOKS: Readonly<Record<WorkState | 'inPlay', Look>> = {
  inPlay: { fill: paint('turf'), pattern: null, line: paint('leaf') },
  ready: { fill: paint('paper'), pattern: null, line: paint('leaf') },
  opened: { fill: paint('paper'), pattern: 'shut', line: paint('rust') },
  cleared: { fill: paint('paper'), pattern: 'grit', line: paint('ochre') },
  dressed: { fill: paint('sand'), pattern: 'grit', line: paint('ochre') },
  finished: { fill: paint('leaf'), pattern: null, line: paint('leaf') },
}

const wordsOf = (green: MapGreen, input: CourseMapInput): string => {
  const state = input.states?.get(green.id)
  const step = input.walk?.indexOf(green.id) ?? -1
  return [
    green.hole === null ? green.name : `${green.hole} ${green.name}`,
    state === undefined ? PLAY_WORDS.inPlay : STATE_WORDS[state].word,
    ...(step < 0 ? [] : [`number ${step + 1} in the walk`]),
    ...(green.isDrawn ? [] : ['outline not drawn']),
  ].join(', ')
}

/** One green, to scale, with room for a finger. */
export const greenDrawing = (green: MapGreen, input: CourseMapInput, plan: MapPlan): Drawing => {
  const look = LOOKS[input.states?.get(green.id) ?? 'inPlay']
  const [x, y] = plan.toPx(green.centre)
  const d = polygonPath(green.outline, plan)
  const chosen = input.selected === green.id
  const pattern: DrawingChild =
    look.pattern === null
      ? null
      : draw('path', { d, 'fill-rule': 'evenodd', fill: patternFill(input.scope, look.pattern) })
  return part('green', green.id, wordsOf(green, input), [
    draw('circle', { cx: x, cy: y, r: TOUCH_PX, fill: 'transparent' }),
    chosen
      ? draw('circle', {
          cx: x,
          cy: y,
          r: RING_PX,
          fill: 'none',
          stroke: paint('ink'),
          'stroke-width': 2.4,
        })
      : null,
    draw('path', {
      d,
      'fill-rule': 'evenodd',
      fill: look.fill,
      stroke: look.line,
      'stroke-width': 1.4,
      'stroke-linejoin': 'round',
      ...(green.isDrawn ? {} : { 'stroke-dasharray': '3 2' }),
      'data-shape': 'green',
    }),
    pattern,
  ])
}

/** Where the walk goes: legs from green to green with an arrow half way, then the numbers over the greens. */
export const walkDrawing = (input: CourseMapInput, plan: MapPlan): readonly Drawing[] => {
  const stops = (input.walk ?? []).flatMap((id) => {
    const green = input.ground.greens.find((candidate) => candidate.id === id)
    return green === undefined ? [] : [{ id, at: plan.toPx(green.centre) }]
  })
  const legs = stops.slice(1).map(({ id, at: [x, y] }, n) => {
    const [fromX, fromY] = stops[n]?.at ?? [x, y]
    const deg = (Math.atan2(y - fromY, x - fromX) * 180) / Math.PI
    const middle = `translate(${coordinate((fromX + x) / 2)} ${coordinate((fromY + y) / 2)}) rotate(${coordinate(deg)})`
    const long = Math.hypot(x - fromX, y - fromY) > 4 * STEP_RADIUS_PX
    return draw(
      'g',
      { 'data-part': 'leg', 'data-id': id, fill: 'none', stroke: paint('ink'), 'stroke-width': 1.4 },
      [
        draw('path', {
          d: `M${coordinate(fromX)} ${coordinate(fromY)}L${coordinate(x)} ${coordinate(y)}`,
          'stroke-dasharray': '5 4',
        }),
        long ? draw('path', { d: 'M-4 -4L3 0L-4 4', transform: middle }) : null,
      ],
    )
  })
  const numbers = stops.map(({ id, at: [x, y] }, n) =>
    draw('g', { 'data-part': 'step', 'data-id': id }, [
      draw('circle', { cx: x, cy: y, r: STEP_RADIUS_PX, fill: paint('ink') }),
      draw(
        'text',
        { x, y: y + 4, 'font-size': 12, 'font-weight': 700, 'text-anchor': 'middle', fill: paint('paper') },
        [String(n + 1)],
      ),
    ]),
  )
  return [...legs, ...numbers]
}
