import { Fold } from '../../parts/Fold.tsx'
import { Part } from '../../parts/Page.tsx'
import { callWords, who, type Who } from '../../state/access.ts'
import { SetUp, thenReload } from './Door.tsx'
import { SecretForm } from './SecretForm.tsx'
import { ROLE_WORDS, WORDS } from './words.ts'

const called = ({ by, name, role }: Who): string => {
  if (by === 'machine') return WORDS.here
  if (role === null) return WORDS.nobody
  return `${name ?? WORDS.token}, ${ROLE_WORDS[role].name.toLowerCase()}`
}

const Password = () => (
  <Fold summary={WORDS.changePassword}>
    {() => (
      <SecretForm
        fields={[
          { name: 'old', label: WORDS.oldPassword, secret: true, autoComplete: 'current-password' },
          {
            name: 'new',
            label: WORDS.newPassword,
            hint: WORDS.passwordHint,
            secret: true,
            autoComplete: 'new-password',
          },
        ]}
        button={WORDS.changePassword}
        done={WORDS.changed}
        onSend={(values) =>
          callWords('changePassword', { body: { old: values['old'] ?? '', new: values['new'] ?? '' } })
        }
      />
    )}
  </Fold>
)

/** Who this browser is, and how it comes in or goes out. */
export const You = () => {
  const known = who.value
  if (known === null) return null
  const isIn = known.by === 'session' || known.by === 'device'
  return (
    <Part title={WORDS.you}>
      <div class="stack">
        <p>{called(known)}</p>
        {known.by === 'machine' && known.needsSetUp ? (
          <>
            <p>{WORDS.setUpHere}</p>
            <SetUp withCode={false} />
          </>
        ) : null}
        {known.by === 'session' ? <Password /> : null}
        {isIn ? (
          <button type="button" class="thin" onClick={() => void thenReload(callWords('logOut', {}))}>
            {known.by === 'session' ? WORDS.logOut : WORDS.leave}
          </button>
        ) : null}
      </div>
    </Part>
  )
}
