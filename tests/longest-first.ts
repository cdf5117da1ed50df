import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Files that take a minute and more. Begun last, one of them would keep one processor waiting for it. */
const LONGEST = [
  'browser/whole-job.test.ts',
  'browser/whole-job-plain.test.ts',
  'faults/kill-in-a-job.test.ts',
  'browser/pages.test.ts',
  'server/main.test.ts',
];

export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    const isLong = ({ moduleId }: TestSpecification) => LONGEST.some((name) => moduleId.endsWith(name));
    return [...sorted.filter(isLong), ...sorted.filter((file) => !isLong(file))];
  }
}
