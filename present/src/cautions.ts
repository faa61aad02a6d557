import type { TaskKind } from '@swardwright/engine'

/** What can hurt somebody. Closed. */
export const CAUTION_IDS = [
  'services',
  'machinery',
  'vibration',
  'noise',
  'dust',
  'slopes',
  'lifting',
  'spraying',
  'heat',
  'early',
  'public',
] as const

/** The id of a caution. */
export type CautionId = (typeof CAUTION_IDS)[number]

/** One caution as it stands at the foot of a sheet: what to watch, and whose word counts. */
export type Caution = {
  readonly id: CautionId
  /** Two or three words. */
  readonly title: string
  /** What to do, in one or two short sentences. */
  readonly sentence: string
  /** Whose word stands over ours. */
  readonly defersTo: string
  /** Where the advice comes from. */
  readonly source: string
}

const CATALOGUE: Readonly<Record<CautionId, Omit<Caution, 'id'>>> = {
  services: {
    title: 'Buried services',
    sentence:
      'No deep tine goes in until pipes, cables and drains under this green are located and flagged. Plans alone are not enough. Keep the marked strips clear.',
    defersTo: 'local rules for work near buried services and the service owner',
    source: 'HSE, HSG47 Avoiding danger from underground services, 3rd ed., 2014',
  },
  machinery: {
    title: 'Moving parts',
    sentence:
      'Engine off and everything stopped before a hand goes near tines, blades or rollers. Guards on, nobody in front of or behind the machine.',
    defersTo: "the maker's manual; only people trained on this machine",
    source: 'common practice, no source',
  },
  vibration: {
    title: 'Vibration',
    sentence:
      'Share the work and keep within the trigger time of the machine; the manager has the figures. Tell of tingling or numb fingers the same day.',
    defersTo: "local limits and the maker's or hirer's vibration figure",
    source: 'HSE, Control of Vibration at Work Regulations 2005 and ready-reckoner; Directive 2002/44/EC',
  },
  noise: {
    title: 'Noise',
    sentence: 'Wear ear protection with corer, blower and scarifier, and within a few metres of them.',
    defersTo: "local limits and the maker's noise figure",
    source: 'HSE, Control of Noise at Work Regulations 2005',
  },
  dust: {
    title: 'Dust of dry sand',
    sentence:
      'Kiln-dried sand gives off fine silica dust. Load with the wind at your back, keep others out of the plume, and wear the fitted mask where dust shows. Brush or wet a spill; never blow it.',
    defersTo: 'local limits for silica dust and the sand supplier\u2019s safety sheet',
    source: 'HSE, INDG463 Control of exposure to silica dust, 2013; EH40 limit 0.1 mg/m3',
  },
  slopes: {
    title: 'Slopes and edges',
    sentence:
      'Keep to the slope limit on the machine, less on wet grass or with a full hopper. Stay away from bunker lips, banks and ditches; they give way on flat ground too.',
    defersTo: "the machine's own declared limit and driver training",
    source: 'HSE, Overturning tractors; BS EN 836 (pedestrian and ride-on mowers)',
  },
  lifting: {
    title: 'Lifting',
    sentence:
      'Two people or a machine for bags, mats and tine heads. Bend the knees, do not twist with a load.',
    defersTo: 'local lifting guidance and the limits of each person',
    source: 'HSE, INDG143 Manual handling at work',
  },
  spraying: {
    title: 'Feed and wetting agents',
    sentence: 'Gloves and eye protection. Read the label; keep people and dogs off until it is dry.',
    defersTo: 'the product label, its safety sheet and licensed users',
    source: 'common practice, no source; COSHH Regulations 2002 for the UK',
  },
  heat: {
    title: 'Sun and heat',
    sentence: 'Water within reach, shade at breaks, covered skin. Long days: rotate the seats.',
    defersTo: 'local working-time and heat rules',
    source: 'common practice, no source',
  },
  early: {
    title: 'Alone or in the dark',
    sentence:
      'Nobody works alone with a machine out of sight and call. Say where you go, carry a charged phone, lights on before sunrise.',
    defersTo: "the club's rule for lone working",
    source: 'HSE, INDG73 Protecting lone workers (number from memory)',
  },
  public: {
    title: 'Golfers about',
    sentence:
      'Flag out and green shut before the first tine. Face play where you can; stop when somebody is about to hit towards you.',
    defersTo: "the club's rules of play during work",
    source: 'common practice, no source',
  },
}

const HAND_HELD: readonly CautionId[] = ['machinery', 'vibration', 'noise', 'slopes']
const RIDDEN: readonly CautionId[] = ['machinery', 'slopes']

/** Which cautions go with which work. `services` and `dust` depend on depth and sand and are added by `cautionsFor`. */
export const CAUTIONS_BY_TASK: Readonly<Record<TaskKind, readonly CautionId[]>> = {
  feed: ['spraying'],
  core: HAND_HELD,
  solidTine: HAND_HELD,
  scarify: HAND_HELD,
  collect: [...RIDDEN, 'lifting'],
  brushIn: RIDDEN,
  blow: ['machinery', 'vibration', 'noise'],
  cut: RIDDEN,
  dress: [...RIDDEN, 'lifting'],
  dragIn: [...RIDDEN, 'lifting'],
  roll: RIDDEN,
  seed: ['lifting'],
  water: [],
  load: ['machinery', 'lifting'],
  move: ['slopes'],
  setUp: ['machinery', 'lifting'],
}

/** What a day's work is like, beyond its operations. */
export type CautionFacts = {
  readonly operations: readonly TaskKind[]
  /** True when tines go as deep as the club counts as deep. */
  readonly deep: boolean
  /** True when kiln-dried sand is loaded, dressed or dragged. */
  readonly drySand: boolean
  /** True when work starts before sunrise or somebody works out of sight of the others. */
  readonly early: boolean
}

const SAND_WORK: readonly TaskKind[] = ['load', 'dress', 'dragIn']
const TINE_WORK: readonly TaskKind[] = ['core', 'solidTine']

/** The cautions of a post, each once, the gravest first. Golfers and sun are about on every one of them. */
export const cautionsFor = (facts: CautionFacts): readonly Caution[] => {
  const ids = new Set<CautionId>(facts.operations.flatMap((operation) => CAUTIONS_BY_TASK[operation]))
  if (facts.deep && facts.operations.some((operation) => TINE_WORK.includes(operation))) ids.add('services')
  if (facts.drySand && facts.operations.some((operation) => SAND_WORK.includes(operation))) ids.add('dust')
  if (facts.early) ids.add('early')
  if (facts.operations.length > 0) ids.add('heat').add('public')
  return CAUTION_IDS.filter((id) => ids.has(id)).map((id) => ({ id, ...CATALOGUE[id] }))
}

/** The one line under all cautions. */
export const CAUTIONS_DEFER =
  "These are reminders, not training. Local codes, the makers' manuals and licensed or trained people have the last word."
