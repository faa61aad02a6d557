const SECONDS_PER_MINUTE = 60

/** Minutes for a length at a speed. `t = L / v / 60` */
export const drivenMinutes = (lengthM: number, speedMPerS: number): number =>
  lengthM / speedMPerS / SECONDS_PER_MINUTE

/** Minutes between runs: each turn its time, and ways between pieces of the green at working speed. `t = (n t_u + B / v) / 60` */
export const turnMinutes = (turns: number, turnS: number, betweenM: number, speedMPerS: number): number =>
  (turns * turnS) / SECONDS_PER_MINUTE + drivenMinutes(betweenM, speedMPerS)
