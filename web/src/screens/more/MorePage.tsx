import { Page } from '../../parts/Page.tsx'
import { morePages } from '../../shell/pages.ts'
import { SyncLine } from '../../shell/SyncLine.tsx'

const ABOUT: Readonly<Record<string, string>> = {
  '/crew': 'The crew’s page on a phone',
  '/weeks': 'Weeks ahead by past years',
  '/weather': 'The hours ahead, record and climate',
  '/sheets': 'One page a post, to print',
  '/stores': 'Sand in the bay, tines, what to order',
  '/fixtures': 'Dates that golfers hold',
  '/people': 'Crew, shifts, skills',
  '/machines': 'The shed and its paces',
  '/members': 'What members see, and its address',
  '/account': 'Accounts, phones, join links',
  '/courses': 'Turn to another, make one',
  '/settings': 'Units, rules, clock, light',
}

/** On a phone: the pages that are not along the foot. */
export const MorePage = () => (
  <Page title="More">
    <div class="stack">
      <ul class="rows">
        {morePages().map((link) => (
          <li key={link.href}>
            <a href={link.href}>
              <span class="name">{link.word}</span>
              <span class="rest small">{ABOUT[link.href]}</span>
            </a>
          </li>
        ))}
      </ul>
      <SyncLine />
    </div>
  </Page>
)
