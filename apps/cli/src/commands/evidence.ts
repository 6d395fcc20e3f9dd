import { mkdir, rm, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { models, sources, type CheckResult } from '@barwright/science';
import { allResults, evidencePages, rowText, summaryOf } from '../evidence-pages.js';
import type { Out } from '../out.js';
import { table } from '../text.js';

interface EvidenceOptions {
  readonly json?: boolean;
  readonly write?: string;
  readonly model?: string;
}

/** Every check against an outside value: expected, computed, deviation, standing. Red rows stay. */
export async function evidenceCommand(options: EvidenceOptions, out: Out): Promise<void> {
  const results = allResults(options.model);
  if (options.json) out.json({ summary: summaryOf(results), checks: results.map(rowJson) });
  else if (options.write) await write(options.write, results, out);
  else print(results, out);
}

async function write(folder: string, results: readonly CheckResult[], out: Out): Promise<void> {
  await rm(join(folder, 'plots'), { recursive: true, force: true });
  for (const [path, text] of evidencePages(results)) {
    await mkdir(dirname(join(folder, path)), { recursive: true });
    await writeFile(join(folder, path), text);
  }
  out.line(`Evidence of ${models.length} models and ${results.length} checks written to ${folder}`);
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

function print(results: readonly CheckResult[], out: Out): void {
  const rows = [['', 'check', 'expected', 'computed', 'off by', 'allowed', 'unit', 'kind', 'standing', 'source'].map(out.style.faint)];
  for (const result of results) {
    const [mark, ...cells] = rowText(result);
    rows.push([mark ? out.style.act(mark) : '    ', ...cells]);
  }
  for (const line of table(rows, [false, false, true, true, true, true])) out.line(line);
  out.line();
  const { total, outside, measured, published } = summaryOf(results);
  out.line(
    `${total} checks: ${total - outside} inside their tolerance, ${outside} outside. ${measured} against measurements, ${published} against published tables or worked examples; the rest test our typing only.`,
  );
}
