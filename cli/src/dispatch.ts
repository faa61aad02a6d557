import { BadInput, type Command, type Io } from './command.ts'

/** The commands as a list to read. */
export const usageText = (commands: readonly Command[]): string =>
  [
    'swardwright NOUN VERB ...',
    '',
    ...commands.map(
      ({ noun, verb, usage, summary }) =>
        `  ${[noun, verb, usage].filter((word) => word !== '').join(' ')}\n      ${summary}`,
    ),
  ].join('\n')

const find = (
  commands: readonly Command[],
  argv: readonly string[],
): { readonly command: Command; readonly rest: readonly string[] } => {
  const [noun = '', verb = ''] = argv
  const single = commands.find((command) => command.noun === noun && command.verb === '')
  if (single !== undefined) return { command: single, rest: argv.slice(1) }
  const command = commands.find((one) => one.noun === noun && one.verb === verb)
  if (command !== undefined) return { command, rest: argv.slice(2) }
  const verbs = commands.filter((one) => one.noun === noun).map((one) => one.verb)
  throw new BadInput(
    verbs.length > 0
      ? `'${noun}' is followed by one of ${verbs.join(', ')}${verb === '' ? '' : `, not '${verb}'`}`
      : `there is no command '${noun}'; it is one of ${[...new Set(commands.map((one) => one.noun))].join(', ')}`,
  )
}

/** Runs one command. Returns the exit code; what a person typed wrong becomes one sentence on the error stream and 2. */
export const dispatch = async (
  commands: readonly Command[],
  argv: readonly string[],
  io: Io,
): Promise<number> => {
  if (argv.length === 0 || argv.includes('--help') || argv[0] === 'help') {
    io.out(usageText(commands))
    return argv.length === 0 ? 2 : 0
  }
  try {
    const { command, rest } = find(commands, argv)
    return await command.run(rest, io)
  } catch (error) {
    if (!(error instanceof BadInput)) throw error
    io.err(error.message)
    return 2
  }
}
