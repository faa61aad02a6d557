import { FILE_LIST } from '../offline/file-list.ts'

/**
 * Has the browser fetch the rest of the app while there is a line, where it can't be kept for good. The files may stay with it as long as it
 * likes, so a page that is left open can turn to others when the line goes. It promises nothing: a browser throws such copies away at will.
 */
export const fetchAhead = async (): Promise<void> => {
  try {
    const listed = (await (await fetch(`/${FILE_LIST}`)).json()) as readonly string[]
    for (const path of listed.filter((one) => one.startsWith('/assets/')))
      await (await fetch(path, { priority: 'low' })).blob()
  } catch {
    // The line went: what is missing is fetched when it is asked for.
  }
}
