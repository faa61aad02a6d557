import type { MapFileError, OutlineError, PlacedOutlineError } from '@swardwright/engine'

/** One sentence for a file that could not be read as a map. */
export const mapFileErrorSentence = (error: MapFileError): string =>
  error.type === 'notJson' ? `it is not JSON (${error.detail})` : `it must be ${error.expected}`

const ringName = (ring: number): string => (ring === 0 ? 'the outline' : `island ${ring}`)

const problemWords = (problem: OutlineError): string => {
  switch (problem.type) {
    case 'tooFewPoints':
      return `${ringName(problem.ring)} has ${problem.points} points; it must have 3 or more`
    case 'notFinite':
      return `point ${problem.point + 1} of ${ringName(problem.ring)} is not a number`
    case 'selfCrossing':
      return problem.rings[0] === problem.rings[1]
        ? `${ringName(problem.rings[0])} crosses or touches itself`
        : `${ringName(problem.rings[0])} and ${ringName(problem.rings[1])} cross or touch`
    case 'sliver':
      return `${ringName(problem.ring)} is a sliver, ${problem.meanWidthM.toFixed(2)} m wide in the mean; it must be ${problem.minMeanWidthM} m or more`
    case 'tooLarge':
      return `the outline holds ${Math.round(problem.areaM2)} m2; it must be ${problem.maxAreaM2} m2 or less`
    case 'islandOutside':
      return `${ringName(problem.ring)} does not lie on the green`
  }
}

/** One sentence for an outline that is no green, with the place where there is one. */
export const outlineErrorSentence = ({ problem, at }: PlacedOutlineError): string =>
  at === undefined
    ? problemWords(problem)
    : `${problemWords(problem)}, at longitude ${at.lonDeg.toFixed(6)}, latitude ${at.latDeg.toFixed(6)}`
