import { courseAssumptionSentence } from './course-words.ts'
import { dayAndClock, instantMs } from './times.ts'

/** What the sentences need to know besides the code. */
export type AssumedContext = {
  readonly timeZone: string
  /** Names of greens by id. */
  readonly greenNames: ReadonlyMap<string, string>
}

const SAND_WORDS: Readonly<Record<string, string>> = { damp: 'damp sand', kilnDried: 'kiln-dried sand' }

const isInstant = (text: string): boolean => Number.isFinite(Date.parse(text))

/** Sentences by code. A sentence that can't use the fact behind the code returns null, and the code is shown as it is. */
const SENTENCES: Readonly<Record<string, (fact: string, context: AssumedContext) => string | null>> = {
  'prescription-usual': () => 'No prescription was given: what most clubs would do is planned.',
  'no-forecast': () => 'No forecast: every hour counts as dry and sand dries as usual for the season.',
  'dry-after': (fact, { timeZone }) =>
    isInstant(fact)
      ? `The forecast ends on ${dayAndClock(instantMs(fact), timeZone)}; hours after it count as dry.`
      : null,
  'sand-stock-unknown': (fact) => {
    const sand = SAND_WORDS[fact]
    return sand === undefined ? null : `No store of ${sand} is named: there is taken to be enough.`
  },
  'tine-sets-unknown': (fact) => {
    const tine = /^([\d.]+)\/([\d.]+)$/u.exec(fact)
    if (tine === null) return null
    const [, hole = '', core = ''] = tine
    const kind = Number(core) === 0 ? `solid ${hole} mm tines` : `hollow ${hole} mm tines (${core} mm inside)`
    return `No sets of ${kind} are in the stores: there are taken to be enough.`
  },
  'shed-unknown': () => 'No shed on the map: machines are taken to live in the middle of its greens.',
  'cut-off': (fact, { greenNames }) =>
    `${greenNames.get(fact) ?? fact} is shut in by water, wood or ground that is no-go: the way there is taken straight.`,
  'outline-unknown': (fact, { greenNames }) =>
    `${greenNames.get(fact) ?? fact} has no outline: its runs are reckoned on an ellipse of the same area.`,
}

/**
 * One thing a plan takes for granted, as a sentence. Codes are `word` or `word:fact`, the fact may hold colons.
 * A code that this version does not know is shown as it is, so that nothing assumed is hidden.
 */
export const assumedSentence = (code: string, context: AssumedContext): string => {
  const colon = code.indexOf(':')
  const [word, fact] = colon < 0 ? [code, ''] : [code.slice(0, colon), code.slice(colon + 1)]
  const sentence = Object.hasOwn(SENTENCES, word) ? SENTENCES[word] : undefined
  return sentence?.(fact, context) ?? courseAssumptionSentence(code, context.greenNames) ?? code
}

/** All that a plan assumed, with the greens without outline gathered into one sentence when there are several. */
export const assumedSentences = (codes: readonly string[], context: AssumedContext): readonly string[] => {
  const outlines = codes.filter((code) => code.startsWith('outline-unknown:'))
  const gathered = outlines.length < 2 ? [] : outlines
  return [
    ...codes.filter((code) => !gathered.includes(code)).map((code) => assumedSentence(code, context)),
    ...(gathered.length > 0
      ? [`${gathered.length} greens have no outline: their runs are reckoned on ellipses of the same area.`]
      : []),
  ]
}
