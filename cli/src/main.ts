import { CALC_COMMANDS } from './calc.ts'
import { CERT_COMMANDS } from './cert.ts'
import { COURSE_COMMANDS } from './course.ts'
import { dispatch } from './dispatch.ts'
import { ENTRY_COMMANDS } from './entry.ts'
import { GROUND_COMMANDS } from './ground.ts'
import { PLAN_COMMANDS } from './plan.ts'
import { PLAN_RISK_COMMANDS } from './plan-risk.ts'
import { PLAN_WEEKS_COMMANDS } from './plan-weeks.ts'
import { processIo } from './process-io.ts'
import { serve } from './serve.ts'
import { TOKEN_COMMANDS } from './token.ts'
import { WEATHER_COMMANDS } from './weather.ts'

const COMMANDS = [
  ...PLAN_COMMANDS,
  ...PLAN_RISK_COMMANDS,
  ...PLAN_WEEKS_COMMANDS,
  ...CALC_COMMANDS,
  ...COURSE_COMMANDS,
  ...GROUND_COMMANDS,
  ...WEATHER_COMMANDS,
  ...ENTRY_COMMANDS,
  serve,
  ...TOKEN_COMMANDS,
  ...CERT_COMMANDS,
]

// The exit code is set rather than forced, so that what was written to a pipe is written whole.
process.exitCode = await dispatch(COMMANDS, process.argv.slice(2), processIo)
