/** The number of the rule that people take on with their first PIN; its words stand in `views/parts/rule.njk`. */
export const RULE = 1;
