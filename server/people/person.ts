/** What a person may do here. One role each; somebody with two hats is two people in the list. */
export const ROLES = ['technician', 'supervisor', 'safety-officer', 'engineer'] as const;

export type Role = (typeof ROLES)[number];

/** The role as people say it. */
export const ROLE_WORDS: Readonly<Record<Role, string>> = {
  technician: 'technician',
  supervisor: 'supervisor',
  'safety-officer': 'safety officer',
  engineer: 'engineer',
};

export interface Person {
  /** Short and never used again: `t1`. */
  readonly id: string;
  readonly name: string;
  readonly role: Role;
  /** Retired people stay in the list and in the log, and may do nothing. */
  readonly retired: boolean;
}
