/** Where in a course file something is wrong. */
export type CourseWhere = {
  /** Place of the feature in the file, from 0; null when it is not in a feature. */
  readonly feature: number | null
  /** What the file calls the thing: a name or an id; null when it has neither. */
  readonly name: string | null
  /** Path in the file, such as `swardwright.machines[2].kind`; for a list of greens, the line such as `line 4`. */
  readonly path: string
}

/** What a course holds of which no two may share an id (greens: nor a name). */
export type CourseThing = 'green' | 'place' | 'machine' | 'person' | 'store' | 'fixture' | 'service'

/**
 * What can be wrong with a course file, a list of greens or a number of greens. Closed; each carries what, the accepted, the received.
 * `courseErrorSentence` of the present room words them.
 */
export type CourseError =
  | { readonly type: 'tooLarge'; readonly sizeMB: number; readonly maxMB: number }
  | { readonly type: 'notJson'; readonly position: number | null }
  | { readonly type: 'tooDeep'; readonly maxDepth: number; readonly position: number }
  | { readonly type: 'notGeoJson'; readonly expected: string; readonly received: string }
  | { readonly type: 'noGreens' }
  | {
      readonly type: 'tooMany'
      readonly where: CourseWhere
      readonly what: 'values' | 'features' | 'points' | 'greens'
      readonly max: number
      readonly received: number
    }
  | { readonly type: 'wrongVersion'; readonly allowed: number; readonly received: string }
  | {
      readonly type: 'missing'
      readonly where: CourseWhere
      readonly field: string
      readonly expected: string
    }
  | {
      readonly type: 'wrongType'
      readonly where: CourseWhere
      readonly field: string
      readonly expected: string
      readonly received: string
    }
  | {
      readonly type: 'outOfRange'
      readonly where: CourseWhere
      readonly field: string
      readonly unit: string
      readonly min: number
      readonly max: number
      readonly received: number
    }
  | {
      /** A word that is not of the closed list: a kind of machine, an operation among skills, a kind of feature. */
      readonly type: 'notAllowed'
      readonly where: CourseWhere
      readonly field: string
      readonly allowed: readonly string[]
      readonly received: string
    }
  | {
      /** Inside our own part of the file a field that has no meaning there, most often a slip of the pen. */
      readonly type: 'unknownField'
      readonly where: CourseWhere
      readonly field: string
      readonly allowed: readonly string[]
    }
  | {
      readonly type: 'notBelow'
      readonly where: CourseWhere
      readonly field: string
      readonly received: string
      readonly limitField: string
      readonly limit: string
    }
  | { readonly type: 'badTimeZone'; readonly received: string }
  | { readonly type: 'twoOfOneId'; readonly what: CourseThing; readonly id: string }
  | { readonly type: 'twoOfOneName'; readonly name: string; readonly ids: readonly [string, string] }
  | {
      /** Something is named that the course does not hold. */
      readonly type: 'unknownReference'
      readonly where: CourseWhere
      readonly what: 'green' | 'sandBay'
      readonly id: string
      readonly allowed: readonly string[]
    }
  | { readonly type: 'unclosedRing'; readonly where: CourseWhere; readonly gapM: number }
  | {
      readonly type: 'selfCrossing'
      readonly where: CourseWhere
      readonly lonDeg: number
      readonly latDeg: number
    }
  | {
      readonly type: 'sliver'
      readonly where: CourseWhere
      readonly meanWidthM: number
      readonly minMeanWidthM: number
    }
  | {
      readonly type: 'islandOutside'
      readonly where: CourseWhere
      readonly lonDeg: number
      readonly latDeg: number
    }
  | {
      readonly type: 'coordinateOutOfRange'
      readonly where: CourseWhere
      readonly lon: number
      readonly lat: number
      /** True when the two would be in range the other way round. */
      readonly swapped: boolean
    }
  | {
      readonly type: 'tooFarApart'
      readonly where: CourseWhere
      readonly distanceKm: number
      readonly maxKm: number
    }
  | {
      readonly type: 'areaMismatch'
      readonly where: CourseWhere
      readonly statedM2: number
      readonly outlineM2: number
      readonly maxPercent: number
    }
