import { takeNewVersion } from '../state/app-version.ts'

/** Says that a newer version of the app waits. It comes only when asked: nobody loses a page in the middle of something. */
export const NewVersion = () => {
  const take = takeNewVersion.value
  return take === null ? null : (
    <div class="new-version" role="status">
      <span>A new version is ready. What you typed stays.</span>
      <button type="button" onClick={take}>
        Take it now
      </button>
    </div>
  )
}
