/** What somebody may be at a club. `committee` reads. */
export const ROLES = ['manager', 'deputy', 'crew', 'committee'] as const

/** A role that a person or a token has. */
export type Role = (typeof ROLES)[number]
