import { useEffect, useState } from 'preact/hooks'
import { ROLES, type Role, type RouteOutput } from '@swardwright/journal'
import { Note } from '../../parts/Note.tsx'
import { Page } from '../../parts/Page.tsx'
import { callServer } from '../../journal/server.ts'
import { plainHttpLacks, who, wordsOf } from '../../state/access.ts'
import { Invite } from './Invite.tsx'
import { Others } from './Others.tsx'
import { WORDS } from './words.ts'
import { You } from './You.tsx'

/** Roles that somebody may let in. */
const rolesUnder = (role: Role | null): readonly Role[] =>
  role === 'manager' ? ['crew', 'deputy', 'committee'] : role === 'deputy' ? ['crew', 'committee'] : []

/** Who may come in: this browser, the devices of the crew, accounts. Needs the server, which alone knows. */
export const AccountPage = () => {
  const [people, setPeople] = useState<RouteOutput<'people'> | null>(null)
  const [wrong, setWrong] = useState<string | null>(null)
  const role = ROLES.find((known) => known === who.value?.role) ?? null
  const roles = rolesUnder(role)
  const read = async () => {
    const answer = await callServer('people', {})
    if (answer.ok) setPeople(answer.value)
    else setWrong(wordsOf(answer))
  }
  useEffect(() => {
    if (roles.length > 0) void read()
  }, [role])
  const lacks = plainHttpLacks(isSecureContext)
  return (
    <Page title={WORDS.title}>
      {lacks === null ? null : (
        <Note kind="ochre" word="Care:">
          {lacks}
        </Note>
      )}
      <div class="columns">
        <div class="wide">
          <You />
          {roles.length === 0 ? null : <Invite roles={roles} onMade={() => void read()} />}
        </div>
        <div class="wide">
          {wrong === null ? null : (
            <p class="wrong" role="status">
              {wrong}
            </p>
          )}
          {people === null ? null : (
            <Others
              people={people}
              mayMakeAccounts={role === 'manager' && who.value?.needsSetUp === false}
              onChange={() => void read()}
              onWrong={setWrong}
            />
          )}
        </div>
      </div>
    </Page>
  )
}
