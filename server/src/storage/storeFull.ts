/** `SQLITE_FULL`: https://www.sqlite.org/rescode.html#full. */
const SQLITE_FULL = 13

/** `ENOSPC` and `EDQUOT` of the system's files; `53100` (disk_full) of PostgreSQL, appendix A of its manual. */
const CODES: readonly unknown[] = ['ENOSPC', 'EDQUOT', '53100']

/** Whether a store failed for want of room: whoever keeps the server can mend that, and nothing else is wrong. */
export const isStoreFull = (error: Error): boolean =>
  ('code' in error && CODES.includes(error.code)) || ('errcode' in error && error.errcode === SQLITE_FULL)
