import { LocationProvider, Route, Router } from 'preact-iso'
import { AccountPage } from './screens/account/AccountPage.tsx'
import { JoinPage } from './screens/join/JoinPage.tsx'
import { NumberPanel } from './parts/NumberPanel.tsx'
import { FirstPage } from './screens/first/FirstPage.tsx'
import { CrewPage } from './screens/crew/CrewPage.tsx'
import { CoursePage } from './screens/course/CoursePage.tsx'
import { FixturesPage } from './screens/fixtures/FixturesPage.tsx'
import { GreenPage } from './screens/green/GreenPage.tsx'
import { LostPage } from './screens/first/LostPage.tsx'
import { MachinesPage } from './screens/machines/MachinesPage.tsx'
import { MorePage } from './screens/more/MorePage.tsx'
import { NowPage } from './screens/now/NowPage.tsx'
import { PeoplePage } from './screens/people/PeoplePage.tsx'
import { PlanPage } from './screens/plan/PlanPage.tsx'
import { PrescriptionPage } from './screens/prescription/PrescriptionPage.tsx'
import { OutlinePage } from './screens/outline/OutlinePage.tsx'
import { RunsPage } from './screens/runs/RunsPage.tsx'
import { PaperPage } from './screens/paper/PaperPage.tsx'
import { SettingsPage } from './screens/settings/SettingsPage.tsx'
import { SheetsPage } from './screens/sheets/SheetsPage.tsx'
import { StoresPage } from './screens/stores/StoresPage.tsx'
import { HistoryPage } from './screens/weather/HistoryPage.tsx'
import { WeatherPage } from './screens/weather/WeatherPage.tsx'
import { NewVersion } from './shell/NewVersion.tsx'
import { Tabs } from './shell/Tabs.tsx'
import { isCrewPhone } from './state/access.ts'
import { opening } from './state/journal.ts'

const Pages = () => (
  <Router>
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
    <Route path="/people" component={PeoplePage} />
    <Route path="/machines" component={MachinesPage} />
    <Route path="/account" component={AccountPage} />
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
    <a class="skip" href="#page">
      To the page
    </a>
    {isJoining() ? (
      <JoinPage />
    ) : opening.value === 'open' ? (
      <div class="notebook">
        <Pages />
        <Tabs />
      </div>
    ) : (
      <FirstPage opening={opening.value} />
    )}
    <NumberPanel />
    <NewVersion />
  </LocationProvider>
)
