import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { checks, modelById, models, runCheck, sources, type CheckResult } from '@barwright/science';
import type { Out } from '../out.js';
import { table } from '../text.js';

interface EvidenceOptions {
  readonly json?: boolean;
  readonly write?: string;
  readonly model?: string;
}

/** Every check against an outside value: expected, computed, deviation, standing. Red rows stay. */
export async function evidenceCommand(options: EvidenceOptions, out: Out): Promise<void> {
  const results = checks
    .filter((check) => !options.model || check.model.startsWith(options.model))
    .map((check) => runCheck(check, modelById));
  if (options.json) {
    out.json({ summary: summary(results), checks: results.map(rowJson) });
    return;
  }
  if (options.write) {
    await mkdir(options.write, { recursive: true });
    await writeFile(join(options.write, 'models.md'), markdown(results));
    out.line(`Evidence of ${models.length} models and ${results.length} checks written to ${options.write}`);
    return;
  }
  const rows = [['', 'check', 'expected', 'computed', 'off by', 'allowed', 'unit', 'kind', 'standing', 'source']];
  for (const result of results) rows.push(rowText(result));
  for (const line of table(rows, [false, false, true, true, true, true])) out.line(line);
  out.line();
  const { total, outside, measured, published } = summary(results);
  out.line(
    `${total} checks: ${total - outside} inside their tolerance, ${outside} outside. ${measured} against measurements, ${published} against published tables or worked examples; the rest test our typing only.`,
  );
}

function summary(results: readonly CheckResult[]) {
  const of = (kind: string) => results.filter((result) => result.check.kind === kind).length;
  return {
    total: results.length,
    outside: results.filter((result) => !result.inside).length,
    measured: of('measured'),
    published: of('published'),
    code: of('code'),
  };
}

function rowJson({ check, computed, unit, deviation, inside, error }: CheckResult) {
  return {
    ...check,
    source_title: sources[check.source].title,
    computed,
    unit,
    deviation: Number.isFinite(deviation) ? deviation : null,
    inside,
    ...(error ? { error } : {}),
  };
}

function rowText({ check, computed, unit, deviation, inside, error }: CheckResult): string[] {
  const expected = Array.isArray(check.expected) ? `${n(check.expected[0])} to ${n(check.expected[1])}` : n(check.expected);
  return [
    inside ? '    ' : 'red:',
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

function markdown(results: readonly CheckResult[]): string {
  const { total, outside, measured, published, code } = summary(results);
  const lines = [
    '# Evidence',
    '',
    'Made by `npm run evidence`; do not edit by hand. Every published model with its source, and every comparison with a value from outside.',
    'measured: an experiment; published: a table, a standard or a worked example; code: computed from the same equation, so it tests our typing only.',
    '',
    `${total} checks, ${total - outside} inside their tolerance, **${outside} outside**. ${measured} measured, ${published} published, ${code} code.`,
    '',
  ];
  for (const model of models) {
    const own = results.filter((result) => result.check.model === model.id);
    lines.push(
      `## ${model.id}`,
      '',
      `${model.title}. ${model.about}`,
      '',
      `Standing: ${model.standing}. Sources: ${model.sources.map((key) => `\`${key}\` ${sources[key].title}`).join('; ')}.`,
      '',
    );
    if (own.length === 0) {
      lines.push('No outside value was found to check it against.', '');
      continue;
    }
    lines.push(
      '| | check | inputs | expected | computed | off by | allowed | kind | standing | source |',
      '|---|---|---|---|---|---|---|---|---|---|',
    );
    for (const result of own) {
      const [mark, id, expected, computed, off, allowed, unit, kind, standing, source] = rowText(result);
      lines.push(
        `| ${mark?.trim() ? '**red**' : ''} | ${id} | \`${JSON.stringify(result.check.inputs).replaceAll('|', '\\|').slice(0, 160)}\` | ${expected} ${unit} | ${computed} | ${off} | ${allowed} | ${kind} | ${standing} | ${source} |`,
      );
      if (result.check.note && !result.inside) lines.push(`| | | ${result.check.note.replaceAll('|', '\\|')} | | | | | | | |`);
    }
    lines.push('');
  }
  return `${lines.join('\n')}\n`;
}
