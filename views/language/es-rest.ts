import { actionDangers } from './es/action-dangers.ts';
import { auditWords } from './es/audit-words.ts';
import { calculationPages } from './es/calculation-pages.ts';
import { calculationTitles } from './es/calculation-titles.ts';
import { foundAndStates } from './es/found-and-states.ts';
import { gearPlansTables } from './es/gear-plans-tables.ts';
import { historyWords } from './es/history-words.ts';
import { otherCards } from './es/other-cards.ts';
import { outcomesOfOtherWork } from './es/other-outcomes.ts';
import { paperForm } from './es/paper-form.ts';
import { plansAndBench } from './es/plans-and-bench.ts';
import { replyLine } from './es/reply-line.ts';
import { replyReference } from './es/reply-reference.ts';
import type { Catalogue } from './patterns.ts';

/** What is said in Spanish beyond the stroke check: pages of gear, plans, histories, calculations, audit, practice. */
export const rest = {
  ...calculationTitles,
  ...foundAndStates,
  ...actionDangers,
  ...auditWords,
  ...calculationPages,
  ...gearPlansTables,
  ...historyWords,
  ...otherCards,
  ...paperForm,
  ...plansAndBench,
  ...outcomesOfOtherWork,
  ...replyLine,
  ...replyReference,
} as const satisfies Catalogue;
