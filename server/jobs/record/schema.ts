import { z } from 'zod';

const pair = z.object({ label: z.string(), value: z.string() });

const cell = z.object({
  text: z.string(),
  strong: z.boolean().optional(),
  boxed: z.boolean().optional(),
  now: z.boolean().optional(),
  off: z.boolean().optional(),
});

/** One cycle, up and down, as read; null where it was not read and is not missing. */
const cycleTable = z.object({
  caption: z.string(),
  groups: z.array(z.object({ label: z.string(), columns: z.array(z.string()) })),
  rows: z.array(z.object({ cells: z.array(cell) })),
  notes: z.array(z.string()),
});

const result = z.object({
  label: z.string(),
  asFound: z.string(),
  asLeft: z.string(),
  foundOutside: z.boolean(),
  leftOutside: z.boolean(),
  limit: z.string(),
  verdict: z.string().describe('By the reading and its uncertainty; too close for this gauge is an answer'),
});

const evidence = z.object({
  letter: z.string(),
  name: z.string(),
  done: z.string(),
  state: z.string(),
  was: z.string(),
  is: z.string(),
  gauge: z.string(),
  who: z.string(),
  when: z.string(),
});

const hold = z.object({
  hold: z.string(),
  title: z.string(),
  state: z.enum(['signed', 'sent back', 'waived', 'not witnessed', 'review asked for', 'not signed']),
  by: z.string(),
  at: z.string().describe('With its zone'),
  screen: z.string(),
  meaning: z.string().describe('What the signature allowed, and nothing else; or why it was sent back'),
  restsOn: z.string(),
  check: z.string().describe('Check number of the digest of what was shown'),
  evidence: z.array(evidence),
  absent: z.string(),
});

/** Who noted it and when; what was struck stays, with the line and the reason of that. */
const noted = {
  place: z.int().describe('Line of the job'),
  at: z.string(),
  person: z.string(),
  struck: z.string().describe('Blank while it stands'),
};

export const recordSchema = z.object({
  job: z.string(),
  tag: z.string(),
  title: z.string(),
  procedure: z.string(),
  plant: z.string(),
  status: z.enum(['open', 'parked', 'closed']),
  open: z.string().describe('Blank once closed; else what is missing'),
  openedAt: z.string(),
  openedBy: z.string(),
  closedAt: z.string(),
  closedAs: z.string(),
  printedAt: z.string(),
  about: z.string(),
  conclusion: z.string(),
  asFound: cycleTable.nullable(),
  asLeft: cycleTable.nullable(),
  asLeftNote: z.string(),
  results: z.array(result),
  turns: z.array(pair),
  search: z
    .array(pair.extend({ isOwn: z.boolean().describe('As it was written by whoever named it') }))
    .describe('What a search for a fault came to'),
  forces: z
    .object({
      shut: z.string().describe('How it stands shut'),
      open: z.string().describe('How it stands open'),
      rows: z.array(z.object({ label: z.string(), shut: z.string(), open: z.string() })),
      more: z.array(pair),
      note: z.string(),
    })
    .nullable()
    .describe('What holds the valve at both ends of its travel, term by term; null without a spring'),
  loops: z
    .array(
      z.object({
        line: z.int(),
        said: z.string(),
        struck: z.boolean().describe('Another record stands in its place'),
        rows: z.array(pair),
        table: z.object({ heads: z.array(z.string()), rows: z.array(z.array(z.string())) }),
      }),
    )
    .describe(
      'Records of the loop that were uploaded, with what they say; the whole tables stand in the log',
    ),
  holds: z.array(hold),
  /** How each point of the job stands. */
  points: z.array(z.object({ title: z.string(), state: z.string(), more: z.string() })),
  people: z.array(z.object({ id: z.string(), name: z.string() })),
  doneBy: z.array(z.object({ name: z.string(), at: z.string().describe('Of their last line') })),
  takenBack: z.object({ by: z.string(), at: z.string() }).nullable(),
  gear: z.array(
    z.object({
      number: z.string(),
      role: z.string(),
      range: z.string(),
      uncertainty: z.string(),
      due: z.string(),
      certificate: z.string(),
      late: z.boolean().describe('It fell due before the job was closed'),
    }),
  ),
  gearWrong: z
    .array(
      z.object({
        number: z.string(),
        foundOn: z.string(),
        rightUntil: z.string(),
        howFar: z.string(),
        lines: z.string().describe('Lines of this job that rest on it'),
      }),
    )
    .describe('Gear that was found wrong after it was read for this job'),
  findings: z.array(
    z.object({
      ...noted,
      found: z.string(),
      words: z.string(),
    }),
  ),
  parts: z.array(
    z.object({
      ...noted,
      part: z.string(),
      number: z.string(),
      quantity: z.int(),
      batch: z.string(),
    }),
  ),
  photos: z
    .array(
      z.object({
        ...noted,
        words: z.string(),
        about: z.int().nullable().describe('Line of the finding or part that it shows'),
        type: z.enum(['jpeg', 'png', 'webp']),
        widthPx: z.int(),
        heightPx: z.int(),
        bytes: z.int(),
        sha256: z.string().describe('Of its bytes, as this entry of the log carries it'),
      }),
    )
    .describe('Each is served at /jobs/{job}/photos/{place}'),
  departures: z.array(
    z.object({
      place: z.int(),
      at: z.string(),
      person: z.string(),
      what: z.string(),
      struck: z.string(),
      now: z.string(),
      reason: z.string(),
    }),
  ),
  cautions: z.array(
    z.object({
      word: z.enum(['danger', 'warning', 'caution', 'notice']),
      hazard: z.string(),
      consequence: z.string(),
      avoid: z.string(),
      stoodBefore: z.string(),
    }),
  ),
  next: z.array(pair),
  limits: z.array(z.string()),
  lines: z.array(
    z.object({
      place: z.int(),
      what: z.string(),
      reading: z.string(),
      verdict: z.string(),
      who: z.string(),
      when: z.string(),
      struck: z.boolean(),
      doubt: z.string().describe('Gear that this line rests on and that was found wrong since; else blank'),
    }),
  ),
  log: z.object({
    line: z.int().describe('Place of the newest line of this job in the log of the site'),
    place: z.int().describe('Its place among the lines of this job'),
    check: z.string().describe('Check number of that line'),
  }),
});

export type JobRecord = z.infer<typeof recordSchema>;
