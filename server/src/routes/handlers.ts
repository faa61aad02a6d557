import { ok } from '@swardwright/engine'
import { openApiDocument } from '../openApi.ts'
import {
  addAccount,
  addLink,
  changePassword,
  endAccess,
  join,
  logIn,
  logOut,
  people,
  setUp,
  who,
} from './access.ts'
import { getBlob, putBlob } from './blobs.ts'
import { listCalculations, runCalculation } from './calculations.ts'
import type { Context } from './context.ts'
import { addCourse, listCourses } from './courses.ts'
import { health } from './health.ts'
import { live } from './live.ts'
import {
  closeMembersPage,
  membersPageOf,
  openMembersPage,
  readMembersData,
  readMembersPage,
} from './members.ts'
import { pullEntries } from './pull.ts'
import { pushEntries } from './push.ts'
import type { Handlers } from './registrar.ts'
import { chooseWeather, fetchHistory, readHistoryOf, readWeather, uploadHistory } from './weather.ts'

/** The handler of each route. */
export const handlersOf = (context: Context): Handlers => ({
  health: health(context),
  courses: listCourses(context),
  addCourse: addCourse(context),
  pushEntries: pushEntries(context),
  pullEntries: pullEntries(context),
  live: live(context),
  calculations: listCalculations(),
  calculate: runCalculation(),
  weather: readWeather(context),
  chooseWeather: chooseWeather(context),
  history: readHistoryOf(context),
  uploadHistory: uploadHistory(context),
  fetchHistory: fetchHistory(context),
  who: who(context),
  setUp: setUp(context),
  logIn: logIn(context),
  logOut: logOut(context),
  changePassword: changePassword(context),
  join: join(context),
  people: people(context),
  addAccount: addAccount(context),
  addLink: addLink(context),
  endAccess: endAccess(context),
  putBlob: putBlob(context),
  getBlob: getBlob(context),
  membersPage: membersPageOf(context),
  openMembersPage: openMembersPage(context),
  closeMembersPage: closeMembersPage(context),
  readMembersPage: readMembersPage(context),
  readMembersData: readMembersData(context),
  openApi: async () => ok(openApiDocument()),
})
