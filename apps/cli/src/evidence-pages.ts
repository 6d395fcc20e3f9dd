import { checks, modelById, runCheck, sources, topics, type CheckResult, type Model } from '@barwright/science';
import { plotOf } from './evidence-plot.js';

/** Every check with its result, in the order of the pages. */
export function allResults(start = ''): readonly CheckResult[] {
  return checks.filter((check) => check.model.startsWith(start)).map((check) => runCheck(check, modelById));
}

export function summaryOf(results: readonly CheckResult[]) {
  const of = (kind: string) => results.filter((result) => result.check.kind === kind).length;
  return {
    total: results.length,
    outside: results.filter((result) => !result.inside).length,
    measured: of('measured'),
    published: of('published'),
    code: of('code'),
  };
}

/** One line of a table of checks. */
export function rowText({ check, computed, unit, deviation, inside, error }: CheckResult): string[] {
  const expected = Array.isArray(check.expected) ? `${n(check.expected[0])} to ${n(check.expected[1])}` : n(check.expected);
  return [
    inside ? '' : 'red:',
    check.id,
    expected,
    error ?? n(computed),
    Number.isFinite(deviation) ? n(deviation) : '–',
    n(check.tolerance),
    unit === '1' ? '' : unit,
    check.kind,
    check.standing,
    check.source,
  ];
}

function n(value: unknown): string {
  return typeof value === 'number' ? String(Number(value.toPrecision(5))) : String(value ?? '–');
}

/** The pages as files: path → text. */
export function evidencePages(results: readonly CheckResult[]): ReadonlyMap<string, string> {
  const files = new Map<string, string>();
  const byModel = new Map<string, CheckResult[]>();
  for (const result of results) byModel.set(result.check.model, [...(byModel.get(result.check.model) ?? []), result]);
  for (const topic of topics) {
    const lines = [
      `# ${topic.title}`,
      '',
      `${sentence(results.filter((result) => topic.checks.includes(result.check)))} [All topics](README.md)`,
      '',
    ];
    for (const model of topic.models) {
      const own = byModel.get(model.id) ?? [];
      const plot = plotOf(model, own);
      if (plot) files.set(`plots/${model.id}.svg`, `${plot}\n`);
      lines.push(...modelLines(model, own, plot !== undefined));
    }
    files.set(`${topic.id}.md`, `${lines.join('\n')}\n`);
  }
  files.set('README.md', index(results, byModel));
  return files;
}

function sentence(results: readonly CheckResult[]): string {
  const { total, outside, measured, published, code } = summaryOf(results);
  return `${total} checks, ${total - outside} inside their tolerance, ${outside} outside. ${measured} are against measurements, ${published} against published tables, standards or worked examples; ${code} only test our typing.`;
}

function index(results: readonly CheckResult[], byModel: ReadonlyMap<string, readonly CheckResult[]>): string {
  const lines = [
    '# Evidence',
    '',
    'Made by `npm run evidence`; do not edit by hand. Every published model with its source and range, and every comparison with a value from outside.',
    '**measured**: an experiment gave the value; **published**: a table, a standard or a worked example states it; **code**: computed from the same equation, so it tests our typing only.',
    'Tolerances come from the spread between sources or the rounding of the print. What does not agree stays here, red. Figures of the demo plants are invented and prove nothing; they are not on these pages.',
    '',
    sentence(results),
    '',
    '| topic | models | checks | outside |',
    '|---|---:|---:|---:|',
    ...topics.map((topic) => {
      const own = results.filter((result) => topic.checks.includes(result.check));
      return `| [${topic.title}](${topic.id}.md) | ${topic.models.length} | ${own.length} | ${own.filter((result) => !result.inside).length} |`;
    }),
    '',
    '## Outside their tolerance',
    '',
    '| check | expected | computed | allowed | source | why |',
    '|---|---|---|---|---|---|',
    ...results
      .filter((result) => !result.inside)
      .map((result) => {
        const [, id, expected, computed, , allowed, unit, , , source] = rowText(result);
        return `| ${id} | ${expected} ${unit} | ${computed} | ${allowed} | ${source} | ${cell(result.check.note ?? '')} |`;
      }),
    '',
    '## Models that rest on memory, or have no outside value',
    '',
    ...topics.flatMap((topic) =>
      topic.models
        .filter((model) => model.standing === 'memory' || !byModel.has(model.id))
        .map(
          (model) =>
            `- \`${model.id}\`: ${model.standing === 'memory' ? 'constants from memory, unchecked' : 'no outside value was found'}`,
        ),
    ),
  ];
  return `${lines.join('\n')}\n`;
}

function modelLines(model: Model, own: readonly CheckResult[], plot: boolean): string[] {
  const range = (r: readonly [number, number] | undefined) => (r ? `${r[0]} to ${r[1]}` : '');
  const lines = [
    `## ${model.id}`,
    '',
    `${model.title}. ${model.about}`,
    '',
    `Standing: ${model.standing}. Sources: ${model.sources.map((key) => `\`${key}\` ${sources[key].title}`).join('; ')}.`,
    '',
    '| in | unit | possible | fitted | meaning |',
    '|---|---|---|---|---|',
    ...model.inputs.map(
      (input) =>
        `| ${input.key} | ${input.unit} | ${input.choices?.join(', ') ?? range(input.possible)} | ${range(input.fitted ?? input.possible)} | ${cell(input.meaning)} |`,
    ),
    '',
  ];
  if (plot) lines.push(`![${model.title}: rings are what others found, the line is computed](plots/${model.id}.svg)`, '');
  if (own.length === 0) return [...lines, 'No outside value was found to check it against.', ''];
  lines.push(
    '| | check | inputs | expected | computed | off by | allowed | kind | standing | source |',
    '|---|---|---|---|---|---|---|---|---|---|',
  );
  for (const result of own) {
    const [mark, id, expected, computed, off, allowed, unit, kind, standing, source] = rowText(result);
    lines.push(
      `| ${mark ? '**red**' : ''} | ${id} | \`${cell(JSON.stringify(result.check.inputs)).slice(0, 140)}\` | ${expected} ${unit} | ${cell(computed!)} | ${off} | ${allowed} | ${kind} | ${standing} | ${source} |`,
    );
  }
  lines.push('');
  for (const result of own) if (result.check.note) lines.push(`- ${result.check.id}: ${result.check.note}`);
  return [...lines, ''];
}

function cell(text: string): string {
  return text.replaceAll('|', '\\|').replaceAll('\n', ' ');
}
