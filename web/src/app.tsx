import { signal } from '@preact/signals'
import { LocationProvider, Route, Router } from 'preact-iso'
import { NumberPanel } from './parts/NumberPanel.tsx'
import { FirstPage } from './screens/first/FirstPage.tsx'
import { CrewPage } from './screens/crew/CrewPage.tsx'
import { JoinPage } from './screens/join/JoinPage.tsx'
import { LostPage } from './screens/first/LostPage.tsx'
import { NowPage } from './screens/now/NowPage.tsx'
import { lazyScreen } from './shell/lazy-screen.tsx'
import { MissingPart } from './shell/MissingPart.tsx'
import { CourseMissed } from './shell/CourseMissed.tsx'
import { NewVersion } from './shell/NewVersion.tsx'
import { Tabs } from './shell/Tabs.tsx'
import { Turning } from './shell/turning.ts'
import { isCrewPhone } from './state/access.ts'
import { opening } from './state/journal.ts'

const AccountPage = lazyScreen(async () => (await import('./screens/account/AccountPage.tsx')).AccountPage)
const CoursePage = lazyScreen(async () => (await import('./screens/course/CoursePage.tsx')).CoursePage)
const CoursesPage = lazyScreen(async () => (await import('./screens/courses/CoursesPage.tsx')).CoursesPage)
const FixturesPage = lazyScreen(
  async () => (await import('./screens/fixtures/FixturesPage.tsx')).FixturesPage,
)
const GreenPage = lazyScreen(async () => (await import('./screens/green/GreenPage.tsx')).GreenPage)
const HistoryPage = lazyScreen(async () => (await import('./screens/weather/HistoryPage.tsx')).HistoryPage)
const MachinesPage = lazyScreen(
  async () => (await import('./screens/machines/MachinesPage.tsx')).MachinesPage,
)
const MembersPage = lazyScreen(async () => (await import('./screens/members/MembersPage.tsx')).MembersPage)
const MorePage = lazyScreen(async () => (await import('./screens/more/MorePage.tsx')).MorePage)
const OutlinePage = lazyScreen(async () => (await import('./screens/outline/OutlinePage.tsx')).OutlinePage)
const PaperPage = lazyScreen(async () => (await import('./screens/paper/PaperPage.tsx')).PaperPage)
const PeoplePage = lazyScreen(async () => (await import('./screens/people/PeoplePage.tsx')).PeoplePage)
const PlanPage = lazyScreen(async () => (await import('./screens/plan/PlanPage.tsx')).PlanPage)
const PrescriptionPage = lazyScreen(
  async () => (await import('./screens/prescription/PrescriptionPage.tsx')).PrescriptionPage,
)
const RunsPage = lazyScreen(async () => (await import('./screens/runs/RunsPage.tsx')).RunsPage)
const SettingsPage = lazyScreen(
  async () => (await import('./screens/settings/SettingsPage.tsx')).SettingsPage,
)
const SheetsPage = lazyScreen(async () => (await import('./screens/sheets/SheetsPage.tsx')).SheetsPage)
const StoresPage = lazyScreen(async () => (await import('./screens/stores/StoresPage.tsx')).StoresPage)
const WeatherPage = lazyScreen(async () => (await import('./screens/weather/WeatherPage.tsx')).WeatherPage)
const WeeksPage = lazyScreen(async () => (await import('./screens/weeks/WeeksPage.tsx')).WeeksPage)

/** Whether the next page's code is on its way; the page before it stays until then. */
const isTurning = signal(false)

const Pages = () => (
  <Router onLoadStart={() => (isTurning.value = true)} onLoadEnd={() => (isTurning.value = false)}>
    <Route path="/" component={isCrewPhone.value ? CrewPage : NowPage} />
    <Route path="/crew" component={CrewPage} />
    <Route path="/course" component={CoursePage} />
    <Route path="/green/:id" component={GreenPage} />
    <Route path="/green/:id/outline" component={OutlinePage} />
    <Route path="/green/:id/runs" component={RunsPage} />
    <Route path="/prescription" component={PrescriptionPage} />
    <Route path="/plan" component={PlanPage} />
    <Route path="/sheets" component={SheetsPage} />
    <Route path="/weather" component={WeatherPage} />
    <Route path="/weather/history" component={HistoryPage} />
    <Route path="/stores" component={StoresPage} />
    <Route path="/fixtures" component={FixturesPage} />
    <Route path="/weeks" component={WeeksPage} />
    <Route path="/people" component={PeoplePage} />
    <Route path="/machines" component={MachinesPage} />
    <Route path="/members" component={MembersPage} />
    <Route path="/account" component={AccountPage} />
    <Route path="/courses" component={CoursesPage} />
    <Route path="/paper" component={PaperPage} />
    <Route path="/settings" component={SettingsPage} />
    <Route path="/more" component={MorePage} />
    <Route default component={LostPage} />
  </Router>
)

/** A join link is opened by a device that has nothing yet. */
const isJoining = (): boolean => location.pathname === '/join'

/** The whole app: the tabs and the page that is open, or the first page while there is no course. */
export const App = () => (
  <LocationProvider>
    <Turning />
    <a class="skip" href="#page">
      To the page
    </a>
    {isJoining() ? (
      <JoinPage />
    ) : opening.value === 'open' ? (
      <div class="notebook">
        <Pages />
        <Tabs />
        {isTurning.value ? (
          <p class="turning small" role="status">
            Opening the page …
          </p>
        ) : null}
      </div>
    ) : (
      <FirstPage opening={opening.value} />
    )}
    <NumberPanel />
    <MissingPart />
    <NewVersion />
    <CourseMissed />
  </LocationProvider>
)
