import { calculate, CATALOGUE, describeItem } from '@swardwright/engine'
import { calculationErrorWords } from '@swardwright/present'
import { BadInput, type Command, type Io } from './command.ts'
import { readOptions } from './options.ts'

const list = (argv: readonly string[], io: Io): Promise<number> => {
  const { options } = readOptions(argv, { json: 'flag' })
  if (options.json === true) io.out(JSON.stringify(CATALOGUE.map(describeItem)))
  else {
    const width = Math.max(...CATALOGUE.map(({ name }) => name.length))
    for (const { name, title } of CATALOGUE) io.out(`${name.padEnd(width)}  ${title}`)
  }
  return Promise.resolve(0)
}

const parsed = (text: string): unknown => {
  try {
    return JSON.parse(text)
  } catch {
    throw new BadInput(`the input is not JSON: ${text.slice(0, 60)}`)
  }
}

const run = (argv: readonly string[], io: Io): Promise<number> => {
  const { words } = readOptions(
    argv,
    {},
    { least: 2, most: 2, names: 'a NAME and its input as JSON, in quotes' },
  )
  const result = calculate(words[0] ?? '', parsed(words[1] ?? ''))
  if (!result.ok) throw new BadInput(calculationErrorWords(result.error))
  io.out(JSON.stringify(result.value))
  return Promise.resolve(0)
}

/** The calculation catalogue from the terminal. */
export const CALC_COMMANDS: readonly Command[] = [
  {
    noun: 'calc',
    verb: 'list',
    usage: '[--json]',
    summary: 'lists every calculation with inputs, outputs, sources and checks',
    run: list,
  },
  {
    noun: 'calc',
    verb: 'run',
    usage: "NAME '<json>'",
    summary: 'runs one calculation; prints its output as one line of JSON',
    run,
  },
]
