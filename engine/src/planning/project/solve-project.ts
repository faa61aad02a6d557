import type { ProjectFound, ProjectSearch } from './found.ts'
import { solveWithLags } from './lags/solve-with-lags.ts'
import { networkOf } from './network.ts'
import type { Project } from './project.ts'
import { solvePlain } from './solve-plain.ts'

/**
 * Searches for a short schedule of a project. The constraints present choose the generator: where activities only wait for others to
 * finish, serial generation never fails (`solvePlain`); with maximum lags, or lags that overlap, a schedule has to be looked for (`solveWithLags`).
 */
export const solveProject = (project: Project, search: ProjectSearch): ProjectFound => {
  const network = networkOf(project)
  return network === null ? solveWithLags(project, search) : solvePlain(network, search)
}
