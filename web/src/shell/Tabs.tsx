import { useLocation } from 'preact-iso'
import { clubName } from '../state/course.ts'
import { isOpen, MAIN_PAGES, morePages, type PageLink } from './pages.ts'
import { SyncLine } from './SyncLine.tsx'
import { pathPressed } from './turning.ts'

const Tab = (props: { readonly link: PageLink; readonly path: string; readonly class?: string }) => (
  <a
    href={props.link.href}
    class={props.class}
    aria-current={isOpen(props.link.href, props.path) ? 'page' : undefined}
  >
    {props.link.word}
  </a>
)

/** The tabs of the notebook. */
export const Tabs = () => {
  const opened = useLocation().path
  const path = pathPressed.value ?? opened
  const underMore = path === '/more' || morePages().some((link) => isOpen(link.href, path))
  return (
    <nav class="tabs" aria-label="Pages">
      <p class="club only-wide">{clubName.value}</p>
      {MAIN_PAGES.map((link) => (
        // A single green is a page of the course.
        <Tab
          key={link.href}
          link={link}
          path={link.href === '/course' && path.startsWith('/green/') ? '/course' : path}
        />
      ))}
      {morePages().map((link) => (
        <Tab key={link.href} link={link} path={path} class="only-wide" />
      ))}
      <a href="/more" class="only-narrow" aria-current={underMore ? 'page' : undefined}>
        More
      </a>
      <div class="foot only-wide">
        <SyncLine />
      </div>
    </nav>
  )
}
