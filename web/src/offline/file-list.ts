/** The file of the build that lists what is kept. */
export const FILE_LIST = 'app-files.json'
