import { computed, signal } from '@preact/signals'
import type { RouteArguments, RouteName, RouteOutput } from '@swardwright/journal'
import { callServer, type Answer } from '../journal/server.ts'
import { author, authorIsTied, tieAuthor } from './author.ts'
import { keepText, keptText } from './kept-text.ts'

/** Who this browser is to the server. */
export type Who = RouteOutput<'who'>

/** Who this browser is to the server; null until it has answered. */
export const who = signal<Who | null>(null)

const ROLE_KEY = 'swardwright.role'

const lastRole = signal(keptText(ROLE_KEY))

/** The role of this device: as the server says, and without a line as it said last. */
const role = computed(() => (who.value === null ? lastRole.value : who.value.role))

/** Whether this is a phone of the crew. */
export const isCrewPhone = computed((): boolean => role.value === 'crew')

/** Whether this device may record at all: the committee reads. */
export const mayRecord = computed((): boolean => role.value !== 'committee')

const BELOW: readonly (string | null)[] = ['crew', 'committee']

/** Whether somebody here decides: manager or deputy, and whoever sits at the server's own machine. */
export const decides = computed((): boolean => !BELOW.includes(role.value))

/** Whether this is a manager, who alone makes courses and accounts. */
export const isManager = computed((): boolean => decides.value && role.value !== 'deputy')

/** Whose entries may be sent from here, as the server holds it: those of one name, where it knows the name; those of others too, where somebody decides. */
export const sender = {
  author: (): string | null => (authorIsTied.value ? author.value : null),
  mayHandOn: (): boolean => who.value?.role === 'manager' || who.value?.role === 'deputy',
} as const

const keepRole = (role: string): void => {
  lastRole.value = role
  keepText(ROLE_KEY, role)
}

/** Asks the server who this browser is. A person or device that is known records under that name and no other. */
export const askWho = async (): Promise<void> => {
  const answer = await callServer('who', {})
  if (!answer.ok) return
  who.value = answer.value
  const { by, name, role } = answer.value
  keepRole(role ?? '')
  if ((by === 'session' || by === 'device') && name !== null) tieAuthor(name)
}

/** Why a call came to nothing, in a sentence; null when it did what was asked. */
export const callWords = async <N extends RouteName>(
  name: N,
  args: Partial<RouteArguments<N>>,
): Promise<string | null> => wordsOf(await callServer(name, args))

/** What an answer says where it is no success. */
export const wordsOf = <N extends RouteName>(answer: Answer<N>): string | null => {
  if (answer.ok) return null
  return answer.why === 'away' ? 'The server does not answer. Check the line, then try again.' : answer.words
}

/**
 * What a page over plain http can't do on a phone; null over https and on the machine itself. Browsers call such a page insecure and give it
 * neither an offline store of pages nor a promise to keep what is recorded.
 */
export const plainHttpLacks = (isSecureContext: boolean): string | null =>
  isSecureContext
    ? null
    : 'This address begins with http: the app can’t be kept on this device for use without a line, and anybody in this network can read along. docs/serving.md says how to serve it over https.'
