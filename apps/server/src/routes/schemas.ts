import { z } from 'zod';

/** Parameters. */
export const plantKey = z.string().min(1).max(64).describe('Key of the plant');
export const plantParams = z.object({ plant: plantKey });
const versionNumber = z
  .string()
  .regex(/^(latest|[1-9][0-9]{0,8})$/, "a whole number from 1, or 'latest', is expected")
  .describe("Number of the version, or 'latest'")
  .transform((word): number | 'latest' => (word === 'latest' ? word : Number(word)));
export const versionParams = z.object({ plant: plantKey, number: versionNumber });

/** Texts by path: 'bars/kestrowan.yaml'. */
export const files = z.record(z.string().max(200), z.string()).describe('Text of each file by its path inside the plant folder');
export const author = z.string().max(200).describe('Who saves');
export const reason = z.string().max(2000).describe('Why, in a sentence');

export const versionInfo = z.object({
  plant: z.string(),
  number: z.int(),
  name: z.string().describe('Name of the plant in this version'),
  createdAt: z.string().describe('ISO 8601, UTC'),
  author: z.string(),
  reason: z.string(),
  basedOn: z.int().nullable().describe('Version it was made from; null for the first'),
  contentHash: z.string().describe('SHA-256 of the files'),
  hash: z.string().describe('SHA-256 of this version and all before it'),
});

/** One complaint or note of the loader. */
export const definitionProblem = z.object({
  code: z.string(),
  file: z.string(),
  line: z.int(),
  column: z.int().optional(),
  message: z.string(),
  expected: z.string().optional(),
  advice: z.string().optional(),
});

const problemBody = z
  .looseObject({
    type: z.string(),
    title: z.string(),
    status: z.int(),
    detail: z.string().describe('One sentence for a person'),
    code: z.string().describe('Stable; branch on this'),
    problems: z.array(z.unknown()).optional().describe('Each place that is wrong'),
  })
  .describe('RFC 9457 problem details');

/** Refusals, the same for every route. */
export const refusals = {
  '4xx': { description: 'Refused', content: { 'application/problem+json': { schema: problemBody } } },
  '5xx': { description: 'Failed', content: { 'application/problem+json': { schema: problemBody } } },
} as const;
