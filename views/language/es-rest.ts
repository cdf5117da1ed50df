import { actionDangers } from './es/action-dangers.ts';
import { auditWords } from './es/audit-words.ts';
import { calculationChoices } from './es/calculation-choices.ts';
import { calculationEquations } from './es/calculation-equations.ts';
import { calculationFormulas } from './es/calculation-formulas.ts';
import { calculationMeasures } from './es/calculation-measures.ts';
import { calculationPages } from './es/calculation-pages.ts';
import { calculationSources } from './es/calculation-sources.ts';
import { calculationTitles } from './es/calculation-titles.ts';
import { calculationValidity } from './es/calculation-validity.ts';
import { calculationWords } from './es/calculation-words.ts';
import { foundAndStates } from './es/found-and-states.ts';
import { gearPlansTables } from './es/gear-plans-tables.ts';
import { historyWords } from './es/history-words.ts';
import { otherCards } from './es/other-cards.ts';
import { outcomesOfOtherWork } from './es/other-outcomes.ts';
import { paperForm } from './es/paper-form.ts';
import { plansAndBench } from './es/plans-and-bench.ts';
import { procedureTitles } from './es/procedure-titles.ts';
import { replyLine } from './es/reply-line.ts';
import { replyReference } from './es/reply-reference.ts';
import type { Catalogue } from './patterns.ts';

/** What is said in Spanish beyond the stroke check: pages of gear, plans, histories, calculations, audit, practice. */
export const rest = {
  ...calculationChoices,
  ...calculationEquations,
  ...calculationFormulas,
  ...calculationMeasures,
  ...calculationSources,
  ...calculationTitles,
  ...calculationValidity,
  ...calculationWords,
  ...procedureTitles,
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
