/** The six ways of running over a green, as greenkeepers tell them. */
const CLOCK_FACES = ['12 to 6', '1 to 7', '2 to 8', '3 to 9', '4 to 10', '5 to 11'] as const

/** Degrees between two hours of a clock face. */
const DEG_PER_HOUR = 30

/**
 * A heading as a clock face: '2 to 8'. `headingDeg` is the bearing of the runs, clockwise from north, any number of degrees; a run goes
 * both ways, so 60 and 240 are the same. `twelveDeg` is the bearing of twelve o'clock: the line of play where it is known, else north (0).
 */
export const clockFace = (headingDeg: number, twelveDeg = 0): string => {
  const alongDeg = (((headingDeg - twelveDeg) % 180) + 180) % 180
  return CLOCK_FACES[Math.round(alongDeg / DEG_PER_HOUR) % CLOCK_FACES.length] ?? ''
}

/** The clock face with the degrees behind: '2 to 8 (62\u00b0)'. Degrees are those of the run between 0 and 179. */
export const headingWords = (headingDeg: number, twelveDeg = 0): string =>
  `${clockFace(headingDeg, twelveDeg)} (${Math.round(((headingDeg % 180) + 180) % 180) % 180}\u00b0)`
