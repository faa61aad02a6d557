import type { Role } from '@swardwright/journal'

/** What each role is called, and may do. */
export const ROLE_WORDS: Readonly<Record<Role, { readonly name: string; readonly may: string }>> = {
  manager: { name: 'Manager', may: 'Everything' },
  deputy: { name: 'Deputy', may: 'Everything but accounts and courses' },
  crew: { name: 'Crew', may: 'Records work, problems, rain, photos' },
  committee: { name: 'Committee', may: 'Reads' },
}

/** Words of the pages about who may come in. */
export const WORDS = {
  title: 'Who may come in',
  closed: 'Who is this?',
  closedLead:
    'The server lets in who has an account or a link. Crew: scan the code or open the link that the manager gives you.',
  setUp: 'The manager’s account',
  setUpLead: 'The server has no account yet. The code stands where the server was started.',
  setUpHere:
    'Nobody has made an account yet, so whoever sits at this machine is the manager. Make one before others reach this server; from then on everybody logs in, here too.',
  code: 'Code from the console',
  name: 'Name',
  nameHint: 'Stands beside what this person records',
  device: 'Name of the person or device',
  password: 'Password',
  passwordHint: 'Ten characters or more; a few words are easy to keep',
  logIn: 'Log in',
  logOut: 'Log out',
  leave: 'Take this device out',
  make: 'Make the account',
  you: 'You',
  here: 'At the server’s own machine: the manager, without log-in',
  nobody: 'Nobody yet',
  token: 'By an access token',
  oldPassword: 'Password now',
  newPassword: 'New password',
  changePassword: 'Change the password',
  changed: 'Changed. Other log-ins of yours have ended.',
  letIn: 'Let a device in',
  letInLead: 'The link is good for one device and one week.',
  role: 'As',
  makeLink: 'Make a link',
  linkReady: 'Scan this with the phone, or send the link',
  copy: 'Copy the link',
  copied: 'Copied',
  localOnly:
    'This address is known to this machine alone, so no phone can open the link. Start the server with --host 0.0.0.0 and open it by its name in the network.',
  accounts: 'Accounts',
  devices: 'Devices',
  links: 'Links that nobody has used yet',
  none: 'None',
  end: 'End',
  revoke: 'Revoke',
  takeBack: 'Take back',
  another: 'Another account',
  anotherLead: 'For somebody who logs in with a password on any device.',
  join: 'Join',
  joinLead: 'This device will record for the club under the name that the manager gave it.',
  joinNow: 'Join with this device',
  joinNone: 'This link is not whole. Open it again from the message, or scan the code again.',
} as const
